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
  dragNegative: {
    message:
      'Die angepasste Kugel wird nach dem Austritt schneller; ein Luftwiderstand lässt sich daraus nicht ablesen.',
    remedy:
      'Prüfen Sie Maßstab, Objektiv und Zeitbasis, oder lassen Sie Bilder nahe dem Bildrand weg.',
  },
  movesBackwards: {
    message: 'Entlang der Fluglinie entfernt sich die Kugel nicht von der Mündung.',
    remedy: 'Kehren Sie die Flugrichtung um, oder prüfen Sie, was verfolgt wurde.',
  },
  sensitivityUnknown: {
    message:
      'Die Anpassung misslingt, sobald eine ihrer Eingaben um deren Unsicherheit verschoben wird.',
    remedy:
      'Sehen Sie sich die Unsicherheiten von Maßstab, Zeitbasis und Mündungsebene an, oder verwenden Sie mehr Bilder.',
  },
  parameterWithoutEffect: {
    message:
      'Einer der Parameter ändert die angepasste Kurve nicht; daher lässt sich keine Unsicherheit für ihn angeben.',
    remedy: 'Verwenden Sie ein Modell mit weniger Parametern oder mehr Bilder.',
  },
  parametersNotSeparable: {
    message:
      'Die Daten können zwei der Parameter nicht voneinander trennen; daher lässt sich keine Unsicherheit für sie angeben.',
    remedy: 'Verwenden Sie ein Modell mit weniger Parametern oder mehr Bilder.',
  },
  pastTarget: {
    message: 'Die Kugel hat das Ziel getroffen, was ihre Bewegung ändert.',
  },
  notLeavingTarget: {
    message: 'Die Mittelpunkte hinter dem Ziel entfernen sich nicht von ihm.',
    remedy: 'Prüfen Sie den Abstand des Ziels und was verfolgt wurde.',
  },
  noUncertainty: {
    message:
      'Weder Film noch Modell haben eine Unsicherheit, an der sich ihre Differenz messen ließe.',
    remedy: 'Geben Sie an, wie gut die Eingaben des Werfers bekannt sind.',
  },
  notMeasured: {
    message:
      'Die Anpassung eines Bilds lässt sich zeigen, sobald der Film in diesem Fenster gemessen wurde.',
    remedy: 'Messen Sie ihn, auch wenn er schon einmal gemessen wurde.',
  },
  pixelsNeeded: {
    message: 'Für diese Änderung muss der Film noch einmal gemessen werden.',
    remedy: 'Messen Sie erneut.',
  },
  pictureNotDrawn: {
    message: 'Der Browser konnte die Abbildung nicht in ein Rasterbild umwandeln.',
    remedy: 'Speichern Sie sie stattdessen als SVG.',
  },
};
