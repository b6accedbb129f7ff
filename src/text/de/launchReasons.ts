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
};
