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
};
