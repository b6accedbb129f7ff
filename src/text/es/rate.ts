import type { English, SameShape } from '../catalogue';

export const rateCheck: SameShape<English['panels']['rateCheck']> = {
  title: 'Comprobar la cadencia con la película',
  timer: 'Un cronómetro en la imagen',
  first: 'Primera lectura: {frame, select, none {este fotograma} other {fotograma {frame}}}',
  second: 'Segunda lectura: {frame, select, none {este fotograma} other {fotograma {frame}}}',
  elapsed: 'Tiempo transcurrido en el cronómetro',
  readingU: '± u de una lectura',
  workOut: 'Calcular la cadencia',
  lamp: 'Una lámpara que parpadea con la red',
  mains: 'Frecuencia de la red',
  look: 'Buscar el parpadeo',
  reading: 'Leyendo fotogramas',
  gives: 'La película da {rate}',
  agrees: 'La película da {rate}, que concuerda con la cadencia indicada.',
  apart: 'La película da {rate}, a {number} incertidumbres típicas de la cadencia indicada.',
  use: 'Usar esta cadencia',
};

export const lamp: SameShape<English['panels']['lamp']> = {
  title: 'Medirlo con una lámpara',
  how: 'Filme una lámpara conectada a la red, o una pared iluminada uniformemente, con los ajustes del disparo y una exposición corta. La lámpara parpadea dos veces en cada período de la red; un obturador rodante lo convierte en bandas transversales a la dirección de lectura, que se desplazan de un fotograma a otro.',
  clock: 'Origen del tiempo en ese clip',
  recordingRate: 'La cadencia de grabación indicada arriba',
  containerTimestamps: 'Marcas de tiempo de su archivo',
  direction: 'Dirección de lectura',
  notKnown: 'desconocida',
  directionHint: 'Se usa solo si el clip encaja igual de bien con ambos sentidos.',
  lacksRate:
    'No se ha indicado arriba ninguna cadencia de grabación. Indíquela o use las marcas de tiempo.',
  file: 'Clip de una lámpara',
  choose: 'Elegir el clip de la lámpara…',
  doing: 'Leyendo la lámpara',
  inFile: '{name}: {said}',
  seen: '{frames} fotogramas de {name}; el parpadeo es el {percent} % de la luz.',
  use: 'Usar este tiempo por línea',
  useGlobal: 'Usar un obturador global',
  offFrequency:
    'Según el tiempo del clip, la lámpara parpadea a {rate}, que no es el doble de la frecuencia de la red.',
  offFrequencyRemedy: 'Compruebe la frecuencia de la red y el origen del tiempo del clip.',
  otherSize:
    'La lámpara se filmó con {width} por {height} píxeles y el disparo con {filmWidth} por {filmHeight}; muchas cámaras leen entonces las líneas a otro ritmo.',
  otherSizeRemedy: 'Filme la lámpara con los ajustes del disparo.',
  notRolling:
    'No se aprecia lectura línea a línea: una línea tarda {time}, como con un obturador global.',
  rolls:
    'Las líneas se leen {direction}{assumed, select, yes { (sentido que el clip no determina y que usted ha indicado)} other {}}, {time} cada una: {whole} para las {lines}.',
};
