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
  badLauncher: {
    message:
      'No se puede calcular el lanzador: {form, select, notPositive {«{name}» es {value}.} negative {«{name}» es {value}.} discharge {el coeficiente de descarga de la holgura es {value}.} tooWide {la bola es más ancha que el ánima.} air {la presión, la temperatura o la humedad del aire no pueden ser así.} vapour {el aire a {temperature} K no puede contener tanto vapor.} residual {la presión residual no es inferior a la del aire exterior.} opens {la presión residual abre la membrana de la boca antes del disparo.} other {la bola empieza a {position} mm de la membrana trasera.}}',
    remedy:
      '{form, select, notPositive {Indique un número mayor que 0, en metros o kilogramos.} negative {Indique 0 o un número mayor, en unidades del SI.} discharge {Un coeficiente de descarga va de 0 a 1.} tooWide {Compruebe los dos diámetros y sus unidades.} air {Indique pascales, kelvin y una humedad de 0 a 1.} vapour {Compruebe su temperatura y su humedad.} residual {Indique la presión absoluta que queda en el tubo.} opens {La presión de rotura de la membrana es lo que la presión interior debe superar a la exterior.} other {La posición inicial es la del centro: medio diámetro o más desde cada membrana.}}',
  },
  ballDoesNotLeave: {
    message:
      '{form, select, rests {Según este modelo la bola no sale del tubo: a los {time} ms está a {position} mm de la membrana trasera.} other {Según este modelo la bola no sale del tubo.}}',
    remedy: 'Revise la presión residual, la presión de rotura de la membrana y los rozamientos.',
  },
  gapNotClosed: {
    message: 'Ningún valor de «{source}» que pueda tener un lanzador da la velocidad medida.',
  },
  gasStateLost: {
    message:
      'La dinámica de gases perdió el estado del gas en la celda {cell} de {cells}: allí se formó un vacío.',
    remedy: 'Revise el lanzador: las presiones, masas y longitudes deben ser las de uno real.',
  },
  modelNotConverged: {
    message: 'La dinámica de gases aún cambia más de un {change} con {cells} celdas.',
    remedy: 'Revise el lanzador: una bola que apenas sale no tiene una velocidad definida.',
  },
  predictionBent: {
    message:
      'La predicción no sigue en línea recta a «{source}» en toda su incertidumbre: su propia incertidumbre es aproximada.',
    remedy: 'Indique «{source}» con más exactitud.',
  },
  inputTooUncertain: {
    message: 'La incertidumbre de «{source}» es mayor que el intervalo que puede tener.',
    remedy: 'Indique «{source}» con una incertidumbre menor.',
  },
  fitAtBound: {
    message:
      'El intervalo de «{source}» rebasa lo que puede ser: tómelo como cota por un solo lado.',
    remedy: 'Mida «{source}», o manténgalo en lo indicado.',
  },
  tooFewForFit: {
    message:
      '{values} velocidades y adelantos no determinan {inputs, plural, =0 {ningún dato} one {# dato} other {# datos}}.',
    remedy: 'Libere al menos un dato, y menos de los que hay valores medidos.',
  },
};
