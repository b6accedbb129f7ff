import type { Catalogue } from '../catalogue';

/** What a result may lack, and why a frame does not count. */
export const resultReasons: Catalogue['reasons'] = {
  beforeExit: {
    message: 'El centro está aún detrás del plano de la boca, donde la bola es impulsada.',
  },
  rejectedByHand: {
    message: 'Quitado a mano.',
  },
  glimpsed: {
    message:
      'Mucho antes o después de los demás fotogramas aparece un momento algo redondo: un trozo, no la bola.',
  },
  nothingInMuzzleZone: {
    message:
      'Ningún fotograma muestra la bola a menos de tres diámetros de la boca; lo que perdió allí se supone, no se ve; la incertidumbre lo cuenta.',
    remedy: 'Mueva el campo para que empiece en la boca.',
  },
  nothingBeyondMuzzleZone: {
    message:
      'Ningún fotograma muestra la bola a más de tres diámetros de la boca; no se pueden separar la resistencia del aire y la pérdida en la boca.',
    remedy: 'Amplíe el campo a lo largo del vuelo.',
  },
  exposureUnknown: {
    message: 'No se ha indicado la exposición.',
    remedy: 'Escriba la exposición ajustada en la cámara.',
  },
  monteCarloDisagrees: {
    message:
      'El intervalo del balance y el de Monte Carlo de la velocidad de salida difieren bastante; se indica el de Monte Carlo.',
    remedy:
      'Mire las mayores contribuciones del balance: una se conoce tan mal que su efecto no es proporcional a ella.',
  },
  soundUndecodable: {
    message: 'No se pudo decodificar la pista de sonido.',
    remedy: 'Continúe sin el sonido, o conviértalo a AAC o PCM.',
  },
  noSoundTrack: {
    message: 'Se ha indicado sonido, pero la grabación no tiene pista de sonido.',
    remedy: 'Use el clip original con su sonido, o deje el sonido fuera del disparo.',
  },
  dragNegative: {
    message:
      'En el ajuste, la bola se acelera tras la salida, así que no revela ninguna resistencia del aire.',
    remedy:
      'Compruebe la escala, el objetivo y la base de tiempo, o deje fuera los fotogramas cercanos al borde de la imagen.',
  },
  movesBackwards: {
    message: 'A lo largo de la línea de vuelo, la bola no se aleja de la boca.',
    remedy: 'Invierta la dirección del vuelo, o compruebe qué objeto se ha seguido.',
  },
  sensitivityUnknown: {
    message: 'El ajuste falla en cuanto uno de sus datos se desplaza en su incertidumbre.',
    remedy:
      'Revise las incertidumbres de la escala, la base de tiempo y el plano de la boca, o use más fotogramas.',
  },
  parameterWithoutEffect: {
    message:
      'Uno de los parámetros no cambia la curva ajustada, así que no puede indicarse su incertidumbre.',
    remedy: 'Use un modelo con menos parámetros, o más fotogramas.',
  },
  parametersNotSeparable: {
    message:
      'Los datos no pueden separar dos de los parámetros, así que no puede indicarse su incertidumbre.',
    remedy: 'Use un modelo con menos parámetros, o más fotogramas.',
  },
  pastTarget: {
    message: 'La bola ha dado en el blanco, lo que cambia su movimiento.',
  },
  notLeavingTarget: {
    message: 'Los centros más allá del blanco no se alejan de él.',
    remedy: 'Compruebe la distancia del blanco y qué objeto se ha seguido.',
  },
  noUncertainty: {
    message:
      'Ni la película ni el modelo tienen una incertidumbre con la que comparar su diferencia.',
    remedy: 'Indique con qué exactitud se conocen los datos del lanzador.',
  },
  notMeasured: {
    message:
      'El ajuste de un fotograma puede mostrarse cuando la película se haya medido en esta ventana.',
    remedy: 'Mídala, o mídala de nuevo.',
  },
  pixelsNeeded: {
    message: 'Este cambio exige medir la película otra vez.',
    remedy: 'Mida de nuevo.',
  },
  pictureNotDrawn: {
    message: 'El navegador no pudo convertir la figura en una imagen.',
    remedy: 'Guárdela como SVG.',
  },
  boreNotSeen: {
    message:
      'En los últimos {stretch} diámetros de bola del ánima {count, plural, =0 {no se conoce ningún centro utilizable} one {se conoce # centro utilizable} other {se conocen # centros utilizables}}; para la aceleración hacen falta al menos {fewest}.',
    remedy:
      'Filme a través de un extremo transparente del tubo, con mayor cadencia; la velocidad de salida no lo necesita.',
  },
  boreImplausible: {
    message:
      'Los centros en el ánima dan {acceleration} m/s², lo que el aire exterior no puede imprimir a la bola.',
    remedy:
      'Compruebe la posición del plano de la boca; un tubo transparente puede desplazar lo que se ve a través de su pared.',
  },
  outlier: {
    message: 'El centro se aparta de la trayectoria de los demás {times} veces su incertidumbre.',
  },
  fewFrames: {
    message:
      'Solo {frames, plural, one {# fotograma sustenta} other {# fotogramas sustentan}} el resultado: un valor atípico entre ellos no se notaría.',
    remedy: 'Filme con mayor cadencia o con un campo más amplio tras la boca.',
  },
  scatterLargerThanStated: {
    message:
      'Los centros se dispersan {times} veces más de lo que dice su incertidumbre; esta se amplió por ese factor.',
    remedy:
      'Busque un patrón en los residuos, rechace los fotogramas con el contorno alterado o compruebe la base de tiempo.',
  },
  blurTooShort: {
    message:
      'La bola se mueve solo {length} px durante una exposición, demasiado poco para obtener una velocidad con un {most}.',
    remedy: 'No se pierde nada: una exposición corta da centros más nítidos.',
  },
  tooFewBlurred: {
    message:
      'La longitud del desenfoque se conoce bien en {count, plural, =0 {ningún fotograma} one {# fotograma} other {# fotogramas}} del ajuste; hacen falta al menos {fewest}.',
    remedy: 'Filme un tramo más largo de vuelo libre, o haga que se vea más de la bola.',
  },
  streakDisagrees: {
    message:
      'El desenfoque por movimiento da {blur} m/s y el ajuste {fit} m/s en los mismos fotogramas: difieren en {apart} veces la incertidumbre típica.',
    remedy:
      'Compruebe la exposición: de ella depende el desenfoque, no de la cadencia. Compruebe la cadencia de grabación y los fotogramas perdidos: de ellos depende el ajuste, no de la exposición.',
  },
  tooFewFrames: {
    message:
      '{form, select, pastMuzzle {{frames, plural, =0 {Ningún fotograma utilizable muestra} one {Solo # fotograma utilizable muestra} other {Solo # fotogramas utilizables muestran}} la bola tras el plano de la boca; su velocidad y su incertidumbre necesitan al menos {fewest}.} centres {El centro de la bola se conoce en {frames, plural, =0 {ningún fotograma} one {# fotograma} other {# fotogramas}}; una velocidad con su incertidumbre necesita al menos {fewest}.} other {La escena tras la bola necesita al menos {fewest} fotogramas; hay {frames}.}}',
    remedy:
      '{form, select, pastMuzzle {Filme con mayor cadencia o con un campo más amplio tras la boca, compruebe la posición del plano de la boca o ponga a mano los centros que faltan.} centres {Filme con mayor cadencia o con un campo más amplio, o ponga a mano los centros que faltan.} other {Use un clip con más fotogramas.}}',
  },
  modelNotDetermined: {
    message:
      '{frames, plural, one {# fotograma no determina} other {# fotogramas no determinan}} el modelo elegido.',
    remedy: 'Elija el modelo automático o uno más sencillo, o use más fotogramas.',
  },
  targetNotReached: {
    message:
      'El vuelo ajustado no alcanza el blanco, a {distance} m del plano de la boca, dada su incertidumbre.',
    remedy: 'Compruebe la distancia del blanco, o elija el modelo automático.',
  },
  nothingAfterTarget: {
    message:
      '{frames, plural, =0 {Ningún fotograma utilizable muestra} one {Solo # fotograma utilizable muestra} other {Solo # fotogramas utilizables muestran}} la bola más allá del blanco; su velocidad allí necesita al menos {fewest}.',
    remedy: 'Amplíe el campo más allá del blanco, o ponga a mano los centros que faltan.',
  },
  placeNotReached: {
    message: 'La trayectoria ajustada nunca llega a {distance} m del plano de la boca.',
    remedy: 'Pregunte por un lugar del tramo filmado del vuelo.',
  },
  implausibleModel: {
    message:
      'No es creíble el modelo «{model}»: {form, select, speedsUp {con él la bola se acelera tras la salida.} other {su resistencia del aire es más de {most} veces la que encuentra en el aire una bola de ese tamaño y masa.}}',
    remedy:
      'Compruebe la escala, la base de tiempo y la posición del plano de la boca, o use más fotogramas.',
  },
  dragNotSeen: {
    message:
      '{form, select, frames {{frames, plural, one {# fotograma no separa} other {# fotogramas no separan}} la resistencia del aire y la pérdida en la boca.} other {La película no da el coeficiente de resistencia mejor que con {u}; eso se sabe de antemano de cualquier bola.}}',
    remedy:
      'Filme un tramo más largo del vuelo, o con más fotogramas; la velocidad de salida cuenta lo que no se sabe de la resistencia.',
  },
  trialsWithoutResult: {
    message: 'El ajuste falló en {lost} de {trials} pruebas de la comprobación de Monte Carlo.',
    remedy:
      'Mire las comprobaciones fallidas del ajuste; ayudan más fotogramas o un modelo más sencillo.',
  },
  airImplausible: {
    message:
      'Un aire a {temperature} K y {pressure} Pa, conocidos con {temperatureU} K y {pressureU} Pa, no tiene una densidad con la que se pueda calcular.',
    remedy:
      'Compruebe la temperatura (kelvin), la presión (pascal) y la humedad (de 0 a 1) del aire, y sus incertidumbres.',
  },
};
