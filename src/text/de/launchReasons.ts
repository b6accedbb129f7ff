import type { Catalogue } from '../catalogue';

/** What a launch model needs, and where it gives no answer. */
export const launchReasons: Catalogue['reasons'] = {
  fitNotSettled: {
    message:
      'Die Anpassung kam nicht zur Ruhe: In diesem Modell liegen keine Werte der freien Eingaben nahe bei den Schüssen, oder mehrere passen gleich gut.',
    remedy:
      'Versuchen Sie ein anderes Modell, geben Sie andere Eingaben frei, oder nehmen Sie Schüsse mit weiteren Längen und Drücken auf.',
  },
  fitNotStarted: {
    message:
      'Mit den Eingaben wie angegeben verlässt im Modell die Kugel mindestens eines Schusses das Rohr nicht; daher fehlt ein Ausgangspunkt.',
    remedy: 'Sehen Sie sich diesen Schuss im Schritt „Modelle“ an, oder zählen Sie ihn nicht mit.',
  },
  freeInputsNotSeparable: {
    message:
      'Die Schüsse können die freien Eingaben nicht voneinander trennen: Eine ändert nichts, oder zwei ändern alles in gleicher Weise.',
    remedy:
      'Geben Sie weniger Eingaben frei, verwenden Sie den Vorlauf, oder nehmen Sie Schüsse mit weiteren Längen und Drücken auf.',
  },
  noLauncher: {
    message:
      'Für den Schuss ist kein Werfer angegeben; kein Modell kann daher sagen, wie schnell er schießen sollte.',
    remedy: 'Geben Sie Bohrungsdurchmesser, Rohrlänge, Restdruck und Berstdruck der Membran an.',
  },
  noResidualPressure: {
    message: 'Der im Rohr verbliebene Druck ist nicht angegeben.',
    remedy: 'Geben Sie den absoluten Restdruck an, den das Manometer vor dem Schuss zeigte.',
  },
  noSealBurstPressure: {
    message: 'Der Druck, bei dem sich die Mündungsmembran öffnet, ist nicht angegeben.',
    remedy:
      'Geben Sie an, um wie viel der Druck innen den äußeren übersteigt, wenn sich die Membran öffnet, gemessen an Membranen gleicher Art.',
  },
  noSeriesLauncher: {
    message:
      'Kein Schuss, der zählt, gibt seinen Werfer vollständig an; daher lässt sich kein Modell daneben zeichnen.',
    remedy:
      'Geben Sie für einen davon im Schritt „Modelle“ Bohrung, Rohrlänge, Restdruck und Berstdruck der Membran an.',
  },
  badLauncher: {
    message:
      'Der Werfer lässt sich nicht berechnen: {form, select, notPositive {„{name}“ ist {value}.} negative {„{name}“ ist {value}.} discharge {Der Durchflussbeiwert des Spalts ist {value}.} tooWide {Die Kugel ist weiter als die Bohrung.} air {Druck, Temperatur oder Feuchte der Luft können so nicht sein.} vapour {Luft von {temperature} K kann nicht so viel Wasserdampf halten.} residual {Der Restdruck liegt nicht unter dem der Außenluft.} opens {Der Restdruck öffnet die Mündungsmembran schon vor dem Schuss.} other {Die Kugel beginnt {position} mm von der hinteren Membran.}}',
    remedy:
      '{form, select, notPositive {Geben Sie eine Zahl über 0 an, in Metern oder Kilogramm.} negative {Geben Sie 0 oder eine Zahl darüber an, in SI-Einheiten.} discharge {Ein Durchflussbeiwert liegt zwischen 0 und 1.} tooWide {Prüfen Sie beide Durchmesser und ihre Einheiten.} air {Geben Sie Pascal, Kelvin und eine Feuchte von 0 bis 1 an.} vapour {Prüfen Sie Temperatur und Feuchte.} residual {Geben Sie den absoluten Druck an, der im Rohr verblieben ist.} opens {Der Berstdruck der Membran ist, um wie viel der Druck innen den äußeren übersteigen muss.} other {Die Startposition ist die des Mittelpunkts: mindestens ein halber Durchmesser von jeder Membran.}}',
  },
  ballDoesNotLeave: {
    message:
      '{form, select, rests {In diesem Modell verlässt die Kugel das Rohr nicht: Nach {time} ms ist sie {position} mm von der hinteren Membran entfernt.} other {In diesem Modell verlässt die Kugel das Rohr nicht.}}',
    remedy: 'Sehen Sie sich Restdruck, Berstdruck der Membran und die Reibungen an.',
  },
  gapNotClosed: {
    message:
      'Kein Wert der Eingabe „{source}“, den ein Werfer haben kann, ergibt die gemessene Geschwindigkeit.',
  },
  gasStateLost: {
    message:
      'Die Gasdynamik verlor den Zustand des Gases in Zelle {cell} von {cells}: Dort entstand ein Vakuum.',
    remedy:
      'Sehen Sie sich den Werfer an: Drücke, Massen und Längen müssen die eines wirklichen sein.',
  },
  modelNotConverged: {
    message: 'Die Gasdynamik ändert sich mit {cells} Zellen noch immer um mehr als {change}.',
    remedy:
      'Sehen Sie sich den Werfer an: Eine Kugel, die das Rohr kaum verlässt, hat keine feste Geschwindigkeit.',
  },
  predictionBent: {
    message:
      'Die Vorhersage folgt der Eingabe „{source}“ über deren Unsicherheit nicht geradlinig: Ihre eigene Unsicherheit ist nur grob.',
    remedy: 'Geben Sie „{source}“ genauer an.',
  },
  inputTooUncertain: {
    message:
      'Die Unsicherheit der Eingabe „{source}“ ist größer als der Bereich, den sie haben kann.',
    remedy: 'Geben Sie „{source}“ mit kleinerer Unsicherheit an.',
  },
  fitAtBound: {
    message:
      'Das Intervall der Eingabe „{source}“ reicht über das hinaus, was sie sein kann: Es gilt nur als Schranke auf einer Seite.',
    remedy: 'Messen Sie „{source}“, oder halten Sie den angegebenen Wert fest.',
  },
  tooFewForFit: {
    message:
      '{values} Geschwindigkeiten und Vorläufe legen {inputs, plural, =0 {keine Eingabe} one {# Eingabe} other {# Eingaben}} nicht fest.',
    remedy: 'Geben Sie mindestens eine Eingabe frei und weniger, als es Messwerte gibt.',
  },
};
