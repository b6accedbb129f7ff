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
  brokenParts: {
    message:
      '«{name}» está dañado: lo que hay en el byte {at} no es parte de un vídeo de este tipo.',
    remedy: 'Copie el clip de nuevo desde la cámara.',
  },
  brokenIndex: {
    message:
      '«{name}» está dañado: su índice tiene tiempos de {timed} fotogramas y lugares de {sized}.',
    remedy: 'Copie el clip de nuevo desde la cámara.',
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
  undecodable: {
    message:
      '{form, select, clip {Ningún decodificador de aquí lee este clip: {why}.} coded {«{name}» está codificado en {codec} (formato de píxel {format}), que ningún decodificador de aquí lee.} picture {Ningún decodificador de aquí lee «{name}» ({format}, {pixels}).} noStart {La película no tiene ningún fotograma en el que pueda empezar un decodificador.} other {El decodificador del navegador da fotogramas sin plano de luma ({format}).}}',
    remedy:
      '{form, select, clip {Convierta el clip a FFV1, ProRes o H.264 y ábralo así.} coded {Ábralo en otro navegador, o conviértalo a H.264, ProRes o FFV1.} picture {Guarde las imágenes como PNG, de 8 o 16 bits.} noStart {Copie de nuevo el clip desde la cámara.} other {Use otro navegador.}}',
  },
  truncated: {
    message:
      '{form, select, endsEarly {La película acaba antes de tiempo: enumera {at, select, frame {el fotograma {frame} de {frames}} other {«{name}»}}, pero ahí no sale nada.} frames {«{name}» está cortado: hay {there} de {stated} fotogramas.} midFrame {«{name}» está cortado en medio de un fotograma.} list {«{name}» está cortado: la lista de sus imágenes sigue más allá de su final.} noFrame {La película enumera el fotograma {frame}, pero el decodificador no da ninguno ahí.} bytes {«{name}» está cortado: debería tener {stated} bytes y tiene {there}.} other {«{name}» está cortado: falta su índice (moov), que las cámaras escriben al final.}}',
    remedy:
      '{form, select, endsEarly {Copie de nuevo el clip desde la cámara, o deje fuera su final.} list {Copie de nuevo el archivo.} noFrame {Copie de nuevo el clip desde la cámara, o deje fuera esa parte.} index {Copie de nuevo el clip desde la cámara; una grabación interrumpida necesita la reparación de la propia cámara.} other {Copie de nuevo el clip desde la cámara.}}',
  },
  decoderFailed: {
    message:
      '{form, select, stalled {El decodificador ffmpeg no ha leído ni entregado nada desde hace {seconds} s.} brokeDown {El decodificador ffmpeg falló: {why}.} damaged {La película no se pudo decodificar en {at, select, frame {el fotograma {frame} de {frames}} other {«{name}»}}: {why}.} differs {El fotograma {frame} es otra imagen para un segundo decodificador: la película está dañada ahí o antes.} counts {El navegador encuentra {frames} fotogramas en la película y ffmpeg {others}: su lista de fotogramas está dañada, o no es una que ambos entiendan.} browser {El decodificador del navegador se rindió: {why}.} browserStalled {El decodificador del navegador no ha entregado ningún fotograma desde hace {seconds} s.} other {El fotograma {frame} tiene otro tamaño que el primero ({width} x {height}).}}',
    remedy:
      '{form, select, stalled {Pruebe el clip en otro formato, o una parte más corta.} brokeDown {Pruebe el clip en otro formato, o una parte más corta.} damaged {El clip está dañado ahí: cópielo de nuevo desde la cámara, o deje fuera esa parte.} differs {Copie de nuevo el clip desde la cámara, o deje fuera esa parte.} counts {Copie de nuevo el clip desde la cámara; si no sirve, conviértalo.} browser {Puede que el clip esté dañado ahí: cópielo de nuevo desde la cámara, o deje fuera esa parte.} browserStalled {Recargue la página; si vuelve a ocurrir, convierta el clip.} other {Corte el clip donde cambia su tamaño.}}',
  },
  decoderMissing: {
    message: 'No se pudo cargar el decodificador ffmpeg: {why}.',
    remedy: 'Recargue la página; si no sirve, el programa no se copió entero.',
  },
  emptyFile: {
    message: '«{name}» está vacío (cero bytes).',
    remedy: 'Cópielo de nuevo desde la cámara.',
  },
  noVideoTrack: {
    message: '«{name}» solo contiene sonido, no película.',
    remedy: 'Elija el clip que tomó la cámara.',
  },
  notFootage: {
    message:
      '{form, select, clip {«{name}» no es un vídeo.} picture {«{name}» no es una imagen de una secuencia (PNG, TIFF, BMP o JPEG).} other {No se indicó ningún archivo.}}',
    remedy:
      '{form, select, clip {Elija el clip tal como lo guardó la cámara.} picture {Elija un solo clip, o solo imágenes.} other {Elija un clip.}}',
  },
  mixedSizes: {
    message:
      'Las imágenes no son iguales: «{one}» tiene {oneSize} píxeles con {oneBits} bits, «{other}» tiene {otherSize} con {otherBits} bits, o difieren en formato, color o giro.',
    remedy: 'Deje fuera las imágenes que no son de esta película.',
  },
  noFrame: {
    message: 'La película no tiene el fotograma {frame}.',
  },
  singleFrame: {
    message:
      '{form, select, file {«{name}» contiene {frames, plural, =0 {ningún fotograma} other {un único fotograma}}.} other {La película tiene un único fotograma; una velocidad necesita al menos tres con la bola.}}',
    remedy:
      '{form, select, file {Elija un clip, o todas las imágenes de una secuencia juntas.} other {Elija el propio clip, no una foto de él.}}',
  },
  unreadable: {
    message: '«{name}» ya no se puede leer: {why}.',
    remedy: 'Devuelva el archivo a su sitio y ábralo de nuevo.',
  },
  severalClips: {
    message: 'Se dieron varios clips ({names}); se abre uno cada vez.',
    remedy: 'Elija un clip, o las imágenes de una secuencia.',
  },
  severalShots: {
    message: 'Se dieron {files} archivos de disparo; se abre uno cada vez.',
    remedy: 'Elija un archivo de disparo, con su grabación.',
  },
  decoderChosen: {
    message:
      '{form, select, browser {Este navegador decodifica {codec} por sí mismo.} codec {Ningún navegador decodifica {codec} fotograma a fotograma.} codecIn {Ningún navegador decodifica {codec} en {container}.} film {Este navegador no decodifica esta película {codec}.} container {Ningún navegador lee {container} fotograma a fotograma.} raw {El archivo no tiene cabecera; se lee como se ha indicado.} images {Los navegadores reducen las imágenes a 8 bits por color; ffmpeg las deja como son.} command {La línea de comandos no tiene navegador con que decodificar.} without {Este navegador no tiene WebCodecs.} other {}}',
  },
  footageMismatch: {
    message:
      'El archivo de disparo se hizo a partir de {path}{more, plural, =0 {} other { y # más}} (SHA-256 {expected}…); {name}{others, plural, =0 { es otro archivo} other { y # más son otros archivos}} ({found}…).',
    remedy:
      'Elija la grabación a partir de la que se hizo, o pase sus datos a un disparo nuevo para esta grabación.',
  },
};
