import type { English, SameShape } from '../catalogue';

/** How footage is read: fields of interlaced film, pixels without a header. */
export const reading: SameShape<English['reading']> = {
  scan: {
    name: 'Barrido',
    whole: 'fotogramas enteros',
    interlaced: 'entrelazado, {order}',
    separated: '{scan}; aquí cada campo es un fotograma',
  },
  levels: {
    name: 'Negro y blanco',
    full: '{black} y {white}',
    limited: '{black} y {white} (rango limitado)',
  },
  fields: {
    title: 'Película entrelazada',
    what: 'Una película entrelazada muestra dos momentos en cada fotograma, cada uno en líneas alternas. Separados, cada campo es un fotograma: indique la frecuencia en campos por segundo.',
    label: 'Los fotogramas se leen',
    hint: 'Al cambiarlo, los fotogramas se cuentan de nuevo: se olvidan los excluidos, los centros puestos a mano y los perdidos.',
    order: {
      topFirst: 'primero las líneas 0, 2, 4 …',
      bottomFirst: 'primero las líneas 1, 3, 5 …',
    },
    auto: 'como dice el archivo',
    whole: 'enteros, diga lo que diga el archivo',
    separated: 'separados, {order}',
  },
  raw: {
    title: 'Píxeles sin cabecera',
    what: 'Nada en <strong>{name}</strong> ({bytes} bytes) dice cómo están dispuestos sus píxeles. Indíquelo como lo hacen los ajustes de la cámara o su programa: valores de gris, fila por fila, un fotograma tras otro.',
    width: 'Anchura, píxeles',
    height: 'Altura, píxeles',
    grey: 'Valores de gris',
    bits: {
      '8': '8 bits, 1 byte',
      '10': '10 bits, 2 bytes',
      '12': '12 bits, 2 bytes',
      '16': '16 bits, 2 bytes',
    },
    byteOrder: 'Orden de los bytes',
    order: { little: 'primero el bajo', big: 'primero el alto' },
    skip: 'Bytes antes del primer fotograma',
    gap: 'Bytes entre fotogramas',
    open: 'Abrirlo así',
    leave: 'No abrirlo',
    fits: 'Encaja: {count} fotogramas de {frame} bytes llenan el archivo.',
    tooLarge: 'Aún no encaja: un fotograma tendría {frame} bytes, más de los que tiene el archivo.',
    over: 'Aún no encaja: {n, plural, one {{count} fotograma de {frame} bytes deja} other {{count} fotogramas de {frame} bytes dejan}} {left} bytes sobrantes.',
    single: 'Aún no encaja: un solo fotograma llena el archivo; una película tiene al menos dos.',
    shownHere: 'Aquí se muestra un fotograma en cuanto fotogramas enteros llenen el archivo.',
    frameOf: 'Fotograma {index} de {last}',
    frameIs: 'Fotograma {index} según lo indicado',
  },
};
