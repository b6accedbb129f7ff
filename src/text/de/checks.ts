import type { Catalogue } from '../catalogue';

/** What was looked at in the fit. */
export const checks: Catalogue['reasons'] = {
  chiSquare: {
    message:
      '{form, select, none {Es bleibt kein Bild übrig, um die Streuung zu prüfen.} more {Die Mittelpunkte streuen {ratio}-mal so stark um die Kurve, wie ihre angegebene Unsicherheit zulässt.} less {Die Mittelpunkte streuen nur mit dem {ratio}-Fachen ihrer angegebenen Unsicherheit um die Kurve: Sie ist zu groß angegeben.} other {Die Mittelpunkte streuen so um die Kurve, wie ihre Unsicherheit erwarten lässt ({ratio}-mal).}}',
    remedy:
      'Suchen Sie in den Residuen nach einem Muster, verwerfen Sie Bilder mit gestörtem Umriss, oder prüfen Sie die Zeitbasis.',
  },
  runs: {
    message:
      '{form, select, tooFew {Zu wenige Bilder, um die Residuen auf ein Muster zu prüfen.} chance {Die Residuen wechseln ihr Vorzeichen so oft, wie der Zufall es will.} long {Die Residuen behalten ihr Vorzeichen über lange Strecken: Die Kurve folgt dem Weg nicht.} other {Die Residuen wechseln ihr Vorzeichen öfter, als der Zufall es will: Benachbarte Bilder sind nicht unabhängig.}}',
    remedy:
      '{form, select, long {Lassen Sie das Modell automatisch wählen, prüfen Sie das Objektiv, oder passen Sie ein kürzeres Stück an.} other {Prüfen Sie, ob die Aufnahme im Zeilensprung vorliegt oder Bilder enthält, die aus ihren Nachbarn entstanden sind.}}',
  },
  serialCorrelation: {
    message:
      '{form, select, tooFew {Zu wenige Bilder, um Nachbarn auf Korrelation zu prüfen.} not {Benachbarte Residuen sind nicht korreliert ({by}).} other {Benachbarte Residuen sind korreliert ({by}): Die Unsicherheit der Anpassung ist dann zu klein angegeben.}}',
    remedy:
      'Lassen Sie das Modell automatisch wählen, und sehen Sie nach, ob sich etwas mit der Kugel bewegt.',
  },
  leverage: {
    message:
      '{form, select, alone {Bild {frame} allein entscheidet einen Teil der Anpassung (Hebelwert {say}): Kein anderes Bild würde einen Fehler seines Mittelpunkts zeigen.} other {Ohne Bild {frame}, das in der Anpassung am meisten zählt (Hebelwert {say}), läge die Geschwindigkeit bei etwa {speed}{form, select, within {} other {: weiter ab, als die Unsicherheit seines Mittelpunkts erklärt}}.}}',
    remedy:
      '{form, select, alone {Filmen Sie mit höherer Bildrate, damit dort mehr Bilder stehen.} other {Sehen Sie sich den Mittelpunkt in Bild {frame} an, und verwerfen Sie das Bild, wenn der Umriss gestört ist.}}',
  },
  trendAlongFrame: {
    message:
      '{form, select, tooFew {Zu wenige Bilder, um längs des Bilds auf einen Trend zu prüfen.} none {Die Residuen zeigen längs des Bilds keinen Trend.} other {Die Residuen biegen sich längs des Bilds: Der Maßstab ist nicht überall im Bild gleich, oder der Weg biegt sich.}}',
    remedy:
      'Kalibrieren Sie das Objektiv, markieren Sie die Flugebene, oder lassen Sie Bilder nahe dem Bildrand weg.',
  },
  models: {
    message:
      '{versions, plural, one {Das Ergebnis beruht auf einer Fassung der Bewegungsgleichung.} other {Das Ergebnis ist der Mittelwert aus # Fassungen der Bewegungsgleichung, gewichtet danach, wie gut jede passt.}}',
  },
  muzzleLoss: {
    message:
      'Neben dem Luftwiderstand verliert die Kugel nahe der Mündung {loss} ihrer Geschwindigkeit, auf {u} bekannt.',
  },
  leftOut: {
    message:
      '{leftOut, plural, =0 {Alle {used, plural, other {#}} Mittelpunkte wurden verwendet.} other {{used, plural, one {# Mittelpunkt wurde} other {# Mittelpunkte wurden}} verwendet und # ausgelassen; bei jedem steht, warum.}}',
  },
  monteCarlo: {
    message:
      '{form, select, confirmed {Die Monte-Carlo-Prüfung bestätigt das Intervall der Austrittsgeschwindigkeit.} other {Das Monte-Carlo-Intervall der Austrittsgeschwindigkeit ist nicht ganz das des Budgets, und es ist das angegebene.}}',
  },
  speedsUp: {
    message:
      '{form, select, thing {Etwas von der richtigen Größe in den Bildern {first} bis {last} wird im freien Flug um {change} schneller.} other {Der angepasste Weg wird nach dem Austritt schneller, was eine freie Kugel nicht tut.}}',
    remedy:
      'Prüfen Sie Maßstab, Objektiv und Zeitbasis, oder lassen Sie Bilder nahe dem Bildrand weg.',
  },
};
