import type { English, SameShape } from '../catalogue';

export const streak: SameShape<English['streak']> = {
  label: 'Streifenbild: Bild',
  now: 'Bild {frame} von {count}',
  keys: 'Pfeile nach oben und unten gehen durch die Bilder, Plus und Minus dehnen die Zeitachse, Null zeigt alle Bilder.',
  note: 'Eine Zeile je Bild; die Zeit läuft nach unten.',
  steepNote:
    'Eine Zeile je Bild; die Zeit läuft nach unten. Steiler Flug: Waagerecht liegt seine Achse, in eigenem Maßstab.',
  pointed: 'Bild {frame}, {along} px entlang der Flugachse',
  pointedTime: 'Bild {frame}, {time}, {along} px entlang der Flugachse',
  stretch: 'Zeit dehnen',
  compress: 'Zeit stauchen',
  all: 'Alle Bilder',
  slope: '{slope} px je Bild',
  slopeSpeed: '{slope} px je Bild, etwa {speed}',
  lost: '{n, plural, one {# Bild verloren} other {# Bilder verloren}}',
  muzzle: 'Mündungsebene',
  frame: 'Bild {frame}',
  line: {
    from: 'Schräge Linie, früheres Ende',
    whole: 'Schräge Linie als Ganzes',
    to: 'Schräge Linie, späteres Ende',
    at: 'Bild {frame}, {along} Pixel entlang der Achse',
    atSlope: 'Bild {frame}, {along} Pixel entlang der Achse; {slope}',
  },
};
