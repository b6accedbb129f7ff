import type { Catalogue } from '../catalogue';

/** What a result may lack, and why a frame does not count. */
export const resultReasons: Catalogue['reasons'] = {
  beforeExit: {
    message: 'Der Mittelpunkt liegt noch hinter der Mündungsebene, wo die Kugel angetrieben wird.',
  },
  rejectedByHand: {
    message: 'Von Hand verworfen.',
  },
  glimpsed: {
    message:
      'Lange vor oder nach den anderen Bildern ist für einen Moment etwas Rundes zu sehen: ein Stück, nicht die Kugel.',
  },
  nothingInMuzzleZone: {
    message:
      'Kein Bild zeigt die Kugel innerhalb von drei Durchmessern ab der Mündung; was sie dort verlor, ist daher angenommen, nicht gesehen; die Unsicherheit zählt es mit.',
    remedy: 'Verschieben Sie das Bildfeld so, dass es an der Mündung beginnt.',
  },
  nothingBeyondMuzzleZone: {
    message:
      'Kein Bild zeigt die Kugel mehr als drei Durchmesser hinter der Mündung; Luftwiderstand und Verlust an der Mündung lassen sich daher nicht trennen.',
    remedy: 'Erweitern Sie das Bildfeld längs des Flugs.',
  },
  exposureUnknown: {
    message: 'Die Belichtungszeit ist nicht angegeben.',
    remedy: 'Geben Sie die an der Kamera eingestellte Belichtungszeit ein.',
  },
  monteCarloDisagrees: {
    message:
      'Das Intervall des Budgets und das Monte-Carlo-Intervall der Austrittsgeschwindigkeit unterscheiden sich deutlich; angegeben ist das Monte-Carlo-Intervall.',
    remedy:
      'Sehen Sie sich die größten Beiträge des Budgets an: Einer ist so schlecht bekannt, dass seine Wirkung nicht mehr proportional zu ihm ist.',
  },
  soundUndecodable: {
    message: 'Die Tonspur konnte nicht decodiert werden.',
    remedy: 'Fahren Sie ohne Ton fort, oder wandeln Sie ihn in AAC oder PCM um.',
  },
  noSoundTrack: {
    message: 'Ton ist angegeben, aber die Aufnahme hat keine Tonspur.',
    remedy: 'Verwenden Sie den Originalclip mit Ton, oder lassen Sie den Ton im Schuss weg.',
  },
};
