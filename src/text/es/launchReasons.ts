import type { Catalogue } from '../catalogue';

/** What a launch model needs, and where it gives no answer. */
export const launchReasons: Catalogue['reasons'] = {
  fitNotSettled: {
    message:
      'El ajuste no se estabilizó: con este modelo ningún valor de los datos libres se acerca a los disparos, o varios lo hacen por igual.',
    remedy:
      'Pruebe otro modelo, libere otros datos, o haga disparos con más longitudes y presiones.',
  },
  fitNotStarted: {
    message:
      'Con los datos indicados, en el modelo la bola de al menos un disparo no sale, así que no hay de dónde partir.',
    remedy: 'Revise ese disparo en el paso Modelos, o no lo cuente.',
  },
  freeInputsNotSeparable: {
    message:
      'Los disparos no pueden separar los datos libres: uno no cambia nada, o dos cambian todo por igual.',
    remedy:
      'Libere menos datos, use los adelantos, o haga disparos con más longitudes y presiones.',
  },
  noLauncher: {
    message:
      'El disparo no indica ningún lanzador, así que ningún modelo puede decir a qué velocidad debería disparar.',
    remedy:
      'Indique el diámetro del ánima, la longitud del tubo, la presión residual y la presión de rotura de la membrana.',
  },
  noResidualPressure: {
    message: 'No se indica la presión que quedó en el tubo.',
    remedy: 'Indique la presión residual absoluta que marcaba el manómetro antes del disparo.',
  },
  noSealBurstPressure: {
    message: 'No se indica la presión que abre la membrana de la boca.',
    remedy:
      'Indique en cuánto supera la presión interior a la exterior cuando se abre la membrana, medido en membranas del mismo tipo.',
  },
  noSeriesLauncher: {
    message:
      'Ningún disparo que cuenta indica su lanzador completo, así que no puede dibujarse ningún modelo junto a ellos.',
    remedy:
      'Indique el ánima, la longitud del tubo, la presión residual y la presión de rotura de la membrana de uno de ellos en su paso Modelos.',
  },
};
