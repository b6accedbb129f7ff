import type { Catalogue } from '../catalogue';

/** What is wrong with scale, plane, lens, camera and clock. */
export const calibrationReasons: Catalogue['reasons'] = {
  axisOpposed: {
    message:
      'La dirección del vuelo indicada no concuerda con la trayectoria; se usa la trayectoria.',
    remedy: 'Gire la flecha de dirección en el fotograma para que siga el vuelo.',
  },
  axisUndetermined: {
    message: 'La trayectoria es demasiado corta para dar una dirección.',
    remedy: 'Filme un tramo más largo del vuelo.',
  },
  lineUndetermined: {
    message: 'Los puntos no determinan una recta.',
  },
  bandsStandStill: {
    message:
      'Cada fotograma capta la lámpara en el mismo momento de su parpadeo, así que sus bandas no se distinguen de las luces y sombras de la propia escena.',
    remedy: 'Filme la lámpara con una cadencia que no divida su parpadeo, o durante más tiempo.',
  },
  directionOpen: {
    message:
      'Según estos fotogramas, las líneas podrían leerse en cualquiera de los dos sentidos: la lámpara parpadea un número entero de veces en dos fotogramas.',
    remedy: 'Indique la dirección de lectura, o filme la lámpara con otra cadencia.',
  },
  noFlicker: {
    message: 'No se encontró ningún parpadeo regular cerca de la frecuencia esperada.',
    remedy:
      'Ilumine la escena solo con la lámpara y compruebe la frecuencia de la red y la cadencia del clip.',
  },
  timerElapsed: {
    message: 'El tiempo transcurrido en el cronómetro filmado debe ser mayor que cero.',
    remedy: 'Escriba la diferencia de las dos lecturas.',
  },
  timerFrames: {
    message: 'El segundo fotograma debe ir después del primero.',
    remedy: 'Elija un fotograma posterior para la segunda lectura.',
  },
  boardsAlike: {
    message:
      'Las vistas del tablero se parecen demasiado para revelar la distancia focal del objetivo.',
    remedy: 'Incline el tablero en distintas direcciones, de 20 a 40 grados.',
  },
  edgeOutside: {
    message: 'Un extremo del borde queda fuera del fotograma.',
    remedy: 'Marque los dos extremos dentro del fotograma.',
  },
  noEdge: {
    message: 'Entre los dos extremos marcados no destaca ningún borde.',
    remedy:
      'Marque un borde con un salto claro de luminosidad, como el contorno del tubo o una regla.',
  },
  pixelsOblong: {
    message:
      'Los píxeles de la película no son cuadrados, lo que se da por supuesto al determinar el objetivo con imágenes.',
    remedy: 'Escriba los datos del objetivo, o marque en su lugar un plano.',
  },
  parallaxUnknown: {
    message:
      'No se indica ni la distancia de la cámara ni la distancia focal, así que no se tiene en cuenta cómo cambia la escala lo que está delante o detrás de la línea de vuelo.',
    remedy: 'Mida la distancia del objetivo a la línea de vuelo e indíquela.',
  },
  planeCorners: {
    message:
      'Las cuatro esquinas del plano no son las de un rectángulo en el orden arriba a la izquierda, arriba a la derecha, abajo a la derecha, abajo a la izquierda.',
    remedy: 'Marque de nuevo las esquinas en ese orden, cada una en la suya.',
  },
  regionOutside: {
    message: 'La zona de vuelo queda fuera del fotograma.',
    remedy: 'Dibújela de nuevo sobre el vuelo, o quítela.',
  },
  sceneDiffers: {
    message: 'La escena inmóvil no se parece a la de antes.',
  },
  sceneTooPlain: {
    message: 'La escena inmóvil tiene demasiado pocos detalles para revelar su posición.',
  },
};
