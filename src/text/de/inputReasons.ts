import type { Catalogue } from '../catalogue';

/** Numbers and lines that cannot be read. */
export const inputReasons: Catalogue['reasons'] = {
  decimalComma: {
    message: 'In „{typed}“ steht ein Komma, das zweierlei bedeuten könnte.',
    remedy:
      'Schreiben Sie Tausender mit Leerzeichen oder ohne und nur ein Dezimalkomma: 7,87 oder 12 000.',
  },
  modeUnreadable: {
    message: 'Die Zeile „{words}“ ist keine Betriebsart der Kamera.',
    remedy: 'Schreiben Sie Bilder je Sekunde, Breite und Höhe: 12000 1024 x 256.',
  },
  tooLarge: {
    message: 'Der Wert ist zu groß für eine Zahl.',
  },
};
