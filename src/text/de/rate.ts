import type { English, SameShape } from '../catalogue';

export const rateCheck: SameShape<English['panels']['rateCheck']> = {
  title: 'Bildrate am Film prüfen',
  timer: 'Eine Uhr im Bild',
  first: 'Erste Ablesung: {frame, select, none {dieses Bild} other {Bild {frame}}}',
  second: 'Zweite Ablesung: {frame, select, none {dieses Bild} other {Bild {frame}}}',
  elapsed: 'Auf der Uhr verstrichene Zeit',
  readingU: '± u einer Ablesung',
  workOut: 'Bildrate berechnen',
  lamp: 'Eine Lampe, die mit dem Netz flimmert',
  mains: 'Netzfrequenz',
  look: 'Flimmern suchen',
  reading: 'Bilder werden gelesen',
  gives: 'Der Film ergibt {rate}',
  agrees: 'Der Film ergibt {rate}, in Übereinstimmung mit der angegebenen Bildrate.',
  apart:
    'Der Film ergibt {rate}, {number} Standardunsicherheiten von der angegebenen Bildrate entfernt.',
  use: 'Diese Bildrate verwenden',
};

export const lamp: SameShape<English['panels']['lamp']> = {
  title: 'Mit einer Lampe messen',
  how: 'Filmen Sie eine Lampe am Stromnetz oder eine gleichmäßig beleuchtete Wand mit den Einstellungen des Schusses und kurzer Belichtungszeit. Die Lampe flimmert zweimal je Netzperiode; ein Rolling Shutter macht daraus Streifen quer zur Ausleserichtung, die von Bild zu Bild wandern.',
  clock: 'Herkunft der Zeit in diesem Clip',
  recordingRate: 'Die oben angegebene Bildrate',
  containerTimestamps: 'Zeitstempel in seiner Datei',
  direction: 'Ausleserichtung',
  notKnown: 'nicht bekannt',
  directionHint: 'Wird nur verwendet, wo der Clip zu beiden Richtungen gleich gut passt.',
  lacksRate:
    'Oben ist keine Bildrate angegeben. Geben Sie sie an, oder wählen Sie die Zeitstempel.',
  file: 'Clip einer Lampe',
  choose: 'Clip der Lampe auswählen…',
  doing: 'Lampe wird ausgewertet',
  inFile: '{name}: {said}',
  seen: '{frames} Bilder aus {name}; das Flimmern macht {percent} % des Lichts aus.',
  use: 'Diese Auslesezeit verwenden',
  useGlobal: 'Globalen Verschluss verwenden',
  offFrequency:
    'Nach der Uhr des Clips flimmert die Lampe mit {rate}; das ist nicht die doppelte Netzfrequenz.',
  offFrequencyRemedy: 'Prüfen Sie die Netzfrequenz und die Herkunft der Zeit im Clip.',
  otherSize:
    'Die Lampe wurde mit {width} mal {height} Pixeln gefilmt, der Schuss mit {filmWidth} mal {filmHeight}; viele Kameras lesen die Zeilen dann in anderem Takt.',
  otherSizeRemedy: 'Filmen Sie die Lampe mit den Einstellungen des Schusses.',
  notRolling:
    'Ein zeilenweises Auslesen ist nicht zu erkennen: Eine Zeile dauert {time}, wie bei globalem Verschluss.',
  rolls:
    'Die Zeilen werden {direction} gelesen{assumed, select, yes { (diese Richtung lässt der Clip offen, Sie haben sie angegeben)} other {}}, je {time}: {whole} für alle {lines}.',
};
