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
};
