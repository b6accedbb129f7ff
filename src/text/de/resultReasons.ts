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
  boreNotSeen: {
    message:
      'In den letzten {stretch} Kugeldurchmessern der Bohrung {count, plural, =0 {ist kein brauchbarer Mittelpunkt} one {ist # brauchbarer Mittelpunkt} other {sind # brauchbare Mittelpunkte}} bekannt; für die Beschleunigung dort sind mindestens {fewest} nötig.',
    remedy:
      'Filmen Sie durch ein klares Rohrende, mit höherer Bildrate; die Austrittsgeschwindigkeit braucht es nicht.',
  },
  boreImplausible: {
    message:
      'Die Mittelpunkte in der Bohrung ergeben {acceleration} m/s², was die Außenluft der Kugel nicht geben kann.',
    remedy:
      'Prüfen Sie die Lage der Mündungsebene; ein klares Rohr kann verschieben, was durch seine Wand zu sehen ist.',
  },
  outlier: {
    message:
      'Der Mittelpunkt liegt um das {times}-Fache seiner Unsicherheit neben der Bahn der anderen.',
  },
  fewFrames: {
    message:
      'Nur {frames, plural, one {# Bild trägt} other {# Bilder tragen}} das Ergebnis: Ein Ausreißer darunter wäre nicht zu erkennen.',
    remedy: 'Filmen Sie mit höherer Bildrate oder mit weiterem Bildfeld hinter der Mündung.',
  },
  scatterLargerThanStated: {
    message:
      'Die Mittelpunkte streuen {times}-mal so stark, wie ihre Unsicherheit angibt; diese wurde um diesen Faktor vergrößert.',
    remedy:
      'Suchen Sie in den Residuen nach einem Muster, verwerfen Sie Bilder mit gestörtem Umriss, oder prüfen Sie die Zeitbasis.',
  },
  blurTooShort: {
    message:
      'Während einer Belichtung bewegt sich die Kugel nur um {length} px, zu wenig, um daraus eine Geschwindigkeit auf {most} genau zu bestimmen.',
    remedy: 'Damit ist nichts verloren: Eine kurze Belichtung ergibt die schärferen Mittelpunkte.',
  },
  tooFewBlurred: {
    message:
      'Die Länge der Bewegungsunschärfe ist in {count, plural, =0 {keinem Bild} one {# Bild} other {# Bildern}} der Anpassung gut bekannt; mindestens {fewest} sind nötig.',
    remedy:
      'Filmen Sie ein längeres Stück des freien Flugs, oder lassen Sie mehr von der Kugel sehen.',
  },
  streakDisagrees: {
    message:
      'Die Bewegungsunschärfe ergibt {blur} m/s, die Anpassung über dieselben Bilder {fit} m/s: Sie liegen um das {apart}-Fache der Standardunsicherheit auseinander.',
    remedy:
      'Prüfen Sie die Belichtungszeit: Von ihr hängt die Unschärfe ab, nicht von der Bildrate. Prüfen Sie Bildrate und verlorene Bilder: Von ihnen hängt die Anpassung ab, nicht von der Belichtungszeit.',
  },
  tooFewFrames: {
    message:
      '{form, select, pastMuzzle {{frames, plural, =0 {Kein brauchbares Bild zeigt} one {Nur # brauchbares Bild zeigt} other {Nur # brauchbare Bilder zeigen}} die Kugel hinter der Mündungsebene; für Geschwindigkeit und Unsicherheit sind mindestens {fewest} nötig.} centres {Der Mittelpunkt der Kugel ist in {frames, plural, =0 {keinem Bild} one {# Bild} other {# Bildern}} bekannt; eine Geschwindigkeit mit Unsicherheit braucht mindestens {fewest}.} other {Die Szene hinter der Kugel braucht mindestens {fewest} Bilder; es sind {frames}.}}',
    remedy:
      '{form, select, pastMuzzle {Filmen Sie mit höherer Bildrate oder weiterem Bildfeld hinter der Mündung, prüfen Sie die Lage der Mündungsebene, oder setzen Sie fehlende Mittelpunkte von Hand.} centres {Filmen Sie mit höherer Bildrate oder weiterem Bildfeld, oder setzen Sie die fehlenden Mittelpunkte von Hand.} other {Verwenden Sie einen Clip mit mehr Bildern.}}',
  },
  modelNotDetermined: {
    message:
      '{frames, plural, one {# Bild legt} other {# Bilder legen}} das gewählte Modell nicht fest.',
    remedy:
      'Lassen Sie das Modell automatisch wählen, nehmen Sie ein einfacheres, oder verwenden Sie mehr Bilder.',
  },
  targetNotReached: {
    message:
      'Der angepasste Flug erreicht das Ziel, {distance} m von der Mündungsebene, mit seiner Unsicherheit nicht.',
    remedy: 'Prüfen Sie den Abstand des Ziels, oder lassen Sie das Modell automatisch wählen.',
  },
  nothingAfterTarget: {
    message:
      '{frames, plural, =0 {Kein brauchbares Bild zeigt} one {Nur # brauchbares Bild zeigt} other {Nur # brauchbare Bilder zeigen}} die Kugel hinter dem Ziel; für ihre Geschwindigkeit dort sind mindestens {fewest} nötig.',
    remedy:
      'Erweitern Sie das Bildfeld über das Ziel hinaus, oder setzen Sie fehlende Mittelpunkte von Hand.',
  },
  placeNotReached: {
    message: 'Die angepasste Bahn erreicht die Stelle {distance} m von der Mündungsebene nicht.',
    remedy: 'Fragen Sie nach einer Stelle auf dem gefilmten Stück des Flugs.',
  },
  implausibleModel: {
    message:
      'Nicht glaubhaft ist das Modell „{model}“: {form, select, speedsUp {Mit ihm wird die Kugel nach dem Austritt schneller.} other {Sein Luftwiderstand ist mehr als {most}-mal so groß wie der, auf den eine Kugel dieser Größe und Masse in Luft trifft.}}',
    remedy:
      'Prüfen Sie Maßstab, Zeitbasis und die Lage der Mündungsebene, oder verwenden Sie mehr Bilder.',
  },
  dragNotSeen: {
    message:
      '{form, select, frames {{frames, plural, one {# Bild trennt} other {# Bilder trennen}} Luftwiderstand und Verlust an der Mündung nicht voneinander.} other {Der Film ergibt den Widerstandsbeiwert nicht besser als auf {u}; so viel ist von jeder Kugel vorher bekannt.}}',
    remedy:
      'Filmen Sie ein längeres Stück des Flugs oder mit mehr Bildern; die Austrittsgeschwindigkeit berücksichtigt, was am Luftwiderstand nicht bekannt ist.',
  },
  trialsWithoutResult: {
    message: 'Die Anpassung misslang in {lost} von {trials} Versuchen der Monte-Carlo-Prüfung.',
    remedy:
      'Sehen Sie sich die nicht bestandenen Prüfungen der Anpassung an; mehr Bilder oder ein einfacheres Modell helfen.',
  },
  airImplausible: {
    message:
      'Luft von {temperature} K und {pressure} Pa, auf {temperatureU} K und {pressureU} Pa bekannt, hat keine Dichte, mit der sich rechnen ließe.',
    remedy:
      'Prüfen Sie Temperatur (Kelvin), Druck (Pascal) und Feuchte (0 bis 1) der Luft und deren Unsicherheiten.',
  },
};
