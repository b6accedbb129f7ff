import type { Catalogue } from '../catalogue';

/** What the film shows that a person should hear of. */
export const filmReasons: Catalogue['reasons'] = {
  lightFlickers: {
    message:
      'La luminosidad de la escena inmóvil varía entre el {dimmest} y el {brightest} de su nivel habitual.',
    remedy:
      'Ilumine la escena con una lámpara de corriente continua, o compruebe que la cámara estuviera quieta.',
  },
  framesRepeated: {
    message:
      'La bola se queda quieta entre fotogramas ({between}): parece que hay un fotograma repetido.',
    remedy:
      'Use el archivo original de la cámara, no una copia convertida, o rechace las repeticiones.',
  },
  longBlur: {
    message: 'Durante una exposición la bola se mueve {blur} píxeles, más que su diámetro.',
    remedy: 'Acorte la exposición y añada luz.',
  },
  ballSaturated: {
    message:
      'La bola está sobreexpuesta en {saturated} de {frames} fotogramas; su contorno puede estar desplazado.',
    remedy: 'Filme con menos luz, un diafragma más cerrado o una exposición más corta.',
  },
  filmUnchecked: {
    message:
      'El decodificador del navegador muestra algunos daños sin avisar, y el segundo decodificador, un proceso propio en segundo plano, no pudo comprobar la película. {because}',
    remedy: 'Mida de nuevo, o reduzca el disparo en la línea de comandos.',
  },
  faultyPixels: {
    message:
      'Píxeles muertos, demasiado claros o parpadeantes por donde pasa la bola: {pixels}. Quedan fuera de todos los ajustes.',
    remedy:
      'Nada para este disparo. Antes del próximo, renueve el equilibrio de negros de la cámara con el objetivo tapado, o mueva el campo para que el vuelo no pase por ellos.',
  },
  cameraShakes: {
    message:
      'La imagen tiembla {rms} px (valor cuadrático medio), hasta {most} px; los centros están corregidos por ello, el giro en torno a la línea de visión no.',
    remedy: 'Coloque la cámara separada del lanzador, sobre un soporte más pesado.',
  },
  launcherMoves: {
    message:
      'Antes de que salga la bola, el extremo del lanzador se mueve hasta {most} px respecto a la escena que lo rodea; el plano de la boca se toma por inmóvil.',
    remedy: 'Sujete el lanzador, o marque la boca donde está cuando sale la bola.',
  },
};
