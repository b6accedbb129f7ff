import type { Catalogue } from '../catalogue';

/** What a planned shot would not show well. */
export const planReasons: Catalogue['reasons'] = {
  planInsideMuzzleZone: {
    message:
      'El campo acaba a menos de tres diámetros de bola de la boca, donde no se pueden separar la resistencia del aire y la pérdida en la boca.',
    remedy: 'Amplíe el campo visual, o deje menos de él antes de la boca.',
  },
  planLengthOutOfView: {
    message: 'La longitud conocida no cabe en el campo visual.',
    remedy: 'Use una más corta, o amplíe el campo.',
  },
  planMuzzleOutside: {
    message: 'El plano de la boca queda fuera del campo visual.',
    remedy: 'Deje menos espacio antes de la boca, o amplíe el campo.',
  },
  planParallaxUnknown: {
    message:
      'Sin la distancia de la cámara, la profundidad de la longitud conocida no entra en la incertidumbre.',
    remedy: 'Mida del objetivo a la línea de vuelo.',
  },
  noModes: {
    message: 'No se ha anotado ningún modo.',
    remedy: 'Escriba una línea por modo: 12000 1024 x 256.',
  },
  planBallTooLarge: {
    message:
      'La bola, {diameter}, no cabe en los {across} tras la boca por {high} que muestra la imagen.',
    remedy: 'Amplíe el campo visual, o use más líneas.',
  },
  planBallTooSmall: {
    message: 'La bola mide {across} px; hacen falta al menos {least} px.',
    remedy: 'Reduzca el campo visual, o use más píxeles a lo largo de él.',
  },
  planBallSmall: {
    message:
      'El radio de la bola es de {radius} px; por debajo de {small} px su contorno apenas se distingue de su desenfoque.',
    remedy: 'Reduzca el campo visual, o use más píxeles a lo largo de él.',
  },
  planExposureTooLong: {
    message: 'La exposición, {exposure}, es más larga que un fotograma, {interval}.',
    remedy: 'Exponga menos de {interval}, o baje la cadencia.',
  },
  planReadoutTooLong: {
    message: 'Leer {lines} líneas tarda {readout}, más que un fotograma, {interval}.',
    remedy: 'Compruebe el tiempo por línea, use menos líneas, o baje la cadencia.',
  },
  planTooFast: {
    message:
      'Una bola a {speed} sale del campo en {frames} fotogramas; una velocidad necesita {fewest}.',
    remedy: 'Filme a {rate} fotogramas/s o más, o amplíe el campo.',
  },
  planFewFrames: {
    message:
      'Una bola a {speed} se ve durante {frames} fotogramas: un valor atípico entre tan pocos no se nota.',
    remedy: 'Filme con mayor cadencia, o amplíe el campo.',
  },
  planLongBlur: {
    message:
      'Una bola a {speed} se mueve {blur} veces su radio durante una exposición: sus bordes se desvanecen y su centro se conoce peor de lo que aquí se espera.',
    remedy: 'Exponga {exposure} o menos, con {blur} veces la luz.',
  },
  planNoContrast: {
    message: 'La bola destaca {contrast} veces el ruido; hacen falta al menos {least}.',
    remedy: 'Use más luz, una exposición más larga o un fondo que difiera más de la bola.',
  },
  planLowContrast: {
    message: 'La bola destaca solo {contrast} veces el ruido: puede que se rechacen fotogramas.',
    remedy: 'Use más luz, una exposición más larga o un fondo que difiera más de la bola.',
  },
  planTooDark: {
    message: 'La imagen recibe el {share} de la luz de aquella en la que se leyó su contraste.',
    remedy: 'Use {light} veces la luz de entonces, o exponga más tiempo.',
  },
  planTooBright: {
    message:
      '{form, select, may {La imagen recibe {times} veces la luz de aquella en la que se leyó su contraste: la bola puede salir blanca.} other {La bola o el fondo salen blancos: su borde queda recortado.}}',
    remedy: 'Use {light} veces la luz de entonces.',
  },
  planTooFewFrames: {
    message:
      'La bola se ve tras la boca en {frames, plural, =0 {ningún fotograma} one {# fotograma} other {# fotogramas}}; una velocidad necesita al menos {fewest}.',
    remedy: 'Planee una cadencia mayor o un campo más amplio.',
  },
  cameraTooSlow: {
    message: 'La cámara no toma imágenes a {rate} fotogramas/s.',
    remedy: 'Compruebe la tasa de píxeles o la tabla de modos.',
  },
};
