import type { Catalogue } from '../catalogue';

/** What footage cannot be read, or only with a proviso. */
export const footageReasons: Catalogue['reasons'] = {
  archiveTooLarge: {
    message:
      '«{name}» declara {files} archivos de {size} GiB descomprimidos, más de lo que se descomprime aquí.',
    remedy: 'Descomprímalo y abra la carpeta.',
  },
  badArchive: {
    message: '«{name}» no se puede descomprimir: {why}.',
    remedy: 'Comprímalo de nuevo sin contraseña, o descomprímalo y abra la carpeta.',
  },
  emptyArchive: {
    message: '«{name}» no contiene ninguna grabación.',
    remedy: 'Elija un archivo zip con las imágenes de una secuencia o con un clip.',
  },
  nestedArchive: {
    message: '«{name}» contiene otro archivo comprimido.',
    remedy: 'Descomprímalo una vez y abra lo que contiene.',
  },
  impossibleSize: {
    message: '«{name}» declara fotogramas de {width} x {height} píxeles, lo que no puede ser.',
    remedy: 'Su cabecera está dañada o es otra clase de archivo: cópielo de nuevo desde la cámara.',
  },
  rawMisfit: {
    message:
      '«{name}» no contiene fotogramas enteros de {frame} píxeles con {bits} bits: sobran {left} bytes.',
    remedy:
      'Indique otro tamaño, otra profundidad, otra cabecera u otra separación entre fotogramas.',
  },
  rawBeyondBits: {
    message:
      'El fotograma {frame} de «{name}» contiene el valor de gris {value}; los bits indicados admiten {white} como máximo.',
    remedy:
      'Indique más bits, el otro orden de los bytes u otro tamaño de la cabecera o de la separación.',
  },
  fieldsSeparated: {
    message:
      'Cada fotograma es un campo de una película entrelazada: se filmó una línea de cada dos, y solo esas determinan el centro de la bola; las intermedias se rellenan. Con la mitad de las líneas se conoce peor, y su incertidumbre lo dice.',
    remedy:
      'Nada, si la frecuencia de grabación está indicada en campos por segundo. Para el próximo disparo, haga que la cámara tome fotogramas enteros.',
  },
  fieldsWoven: {
    message:
      'El archivo dice que es entrelazado y sus fotogramas quedan enteros: cada uno muestra dos momentos.',
    remedy: 'Haga separar los campos, salvo que la cámara tomara fotogramas enteros.',
  },
  imagesLoop: {
    message:
      '«{name}» está dañado: tras {count, plural, one {# imagen} other {# imágenes}}, la lista vuelve a una anterior.',
    remedy: 'Copie el archivo de nuevo o guarde las imágenes una por una.',
  },
  tooManyImages: {
    message: '«{name}» enumera más de {most} imágenes.',
    remedy: 'Divídalo o guarde la película como vídeo.',
  },
  tooManyParts: {
    message: '«{name}» está dañado: consta de más de {most} partes.',
    remedy: 'Copie de nuevo el clip desde la cámara.',
  },
  noFootage: {
    message: 'No hay ninguna grabación abierta.',
    remedy: 'Abra primero un clip.',
  },
  noFrames: {
    message: 'No se recibió ninguna imagen.',
    remedy: 'Elija un clip o fotos con al menos una imagen.',
  },
  nothingChosen: {
    message: 'No se encontró ninguna grabación ahí.',
    remedy: 'Elija un clip o una carpeta de imágenes.',
  },
};
