import type { English, SameShape } from '../catalogue';

/** How footage is read: fields of interlaced film, pixels without a header. */
export const reading: SameShape<English['reading']> = {
  scan: {
    name: 'Bildaufbau',
    whole: 'ganze Bilder',
    interlaced: 'Zeilensprung, {order}',
    separated: '{scan}; jedes Halbbild ist hier ein Bild',
  },
  levels: {
    name: 'Schwarz und Weiß',
    full: '{black} und {white}',
    limited: '{black} und {white} (eingeschränkter Bereich)',
  },
  fields: {
    title: 'Film mit Zeilensprung',
    what: 'Ein Film mit Zeilensprung zeigt in jedem Bild zwei Augenblicke, jeden in jeder zweiten Zeile. Getrennt ist jedes Halbbild ein Bild: Geben Sie die Bildrate in Halbbildern je Sekunde an.',
    label: 'Bilder werden gelesen',
    hint: 'Eine Änderung zählt die Bilder neu: ausgelassene Bilder, von Hand gesetzte Mittelpunkte und verlorene Bilder werden vergessen.',
    order: { topFirst: 'Zeilen 0, 2, 4 … zuerst', bottomFirst: 'Zeilen 1, 3, 5 … zuerst' },
    auto: 'wie die Datei sagt',
    whole: 'ganz, was die Datei auch sagt',
    separated: 'getrennt, {order}',
  },
  raw: {
    title: 'Pixel ohne Kopfdaten',
    what: 'Nichts in <strong>{name}</strong> ({bytes} Byte) sagt, wie die Pixel liegen. Geben Sie es so an, wie die Kamera eingestellt war oder ihr Programm es nennt: Grauwerte, Zeile für Zeile, ein Bild nach dem anderen.',
    width: 'Breite, Pixel',
    height: 'Höhe, Pixel',
    grey: 'Grauwerte',
    bits: {
      '8': '8 Bit, 1 Byte',
      '10': '10 Bit, 2 Byte',
      '12': '12 Bit, 2 Byte',
      '16': '16 Bit, 2 Byte',
    },
    byteOrder: 'Reihenfolge der Bytes',
    order: { little: 'niederes zuerst', big: 'höheres zuerst' },
    skip: 'Bytes vor dem ersten Bild',
    gap: 'Bytes zwischen den Bildern',
    open: 'So öffnen',
    leave: 'Nicht öffnen',
    fits: 'Es passt: {count} Bilder zu {frame} Byte füllen die Datei.',
    tooLarge: 'Es passt noch nicht: Ein Bild hätte {frame} Byte, mehr als die Datei hat.',
    over: 'Es passt noch nicht: {n, plural, one {{count} Bild zu {frame} Byte lässt} other {{count} Bilder zu {frame} Byte lassen}} {left} Byte übrig.',
    single: 'Es passt noch nicht: Ein Bild füllt die Datei; ein Film hat mindestens zwei.',
    shownHere: 'Hier erscheint ein Bild, sobald ganze Bilder die Datei füllen.',
    frameOf: 'Bild {index} von {last}',
    frameIs: 'Bild {index} wie angegeben',
  },
};
