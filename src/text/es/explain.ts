import type { English, SameShape } from '../catalogue';

export const explain: SameShape<English['explain']> = {
  title: 'Qué determina este paso',
  yours: 'Sus números',
  notYet: 'aún no se conoce: paso {step}',
  missing: 'Donde aún falta un número, en la fórmula queda su letra. Todavía faltan: {list}.',
  is: '{letter}, {name}',
  mistake: 'Un error habitual',
  toMistake: 'En imágenes: {title}',
  what: {
    footage:
      'La película es una serie de imágenes tomadas a tiempos iguales. Todo lo que sigue cuenta fotogramas: cuál muestra la bola y dónde. Por eso no puede faltar ni repetirse ninguno, y debe ser el archivo de la propia cámara, no una copia ralentizada o cortada.',
    clock:
      'La velocidad es distancia entre tiempo, y la película no tiene tiempo propio: es el número de fotogramas entre la cadencia de grabación. Lo que está mal en la cadencia está mal en toda velocidad, en la misma proporción.',
    scale:
      'La película conoce píxeles; la velocidad necesita metros. Una longitud conocida, vista en el plano del vuelo, da los metros de un píxel. Una longitud detrás de ese plano parece menor; la distancia de la cámara dice cuánto.',
    ball: 'En cada fotograma se mide el centro de la bola con una pequeña fracción de píxel. Su distancia al plano de la boca, a lo largo del vuelo, es ese número de píxeles por la escala. Mientras el obturador está abierto la bola avanza, y su imagen se alarga en el vuelo por el desenfoque de movimiento.',
    seal: 'La membrana está abierta desde que se rasga su abombamiento. Comparado con el instante en que el centro de la bola cruza el plano de la boca, eso dice qué ocurrió antes y por cuánto.',
    result:
      'Dos centros y sus tiempos ya dan una velocidad: la media entre ellos. El aire frena la bola, así que en la boca es mayor; el ajuste por todos los centros la lleva de vuelta al plano de la boca.',
    models:
      'Lo máximo que podría dar el aire: toda su presión sobre la bola a lo largo de todo el cañón, sin nada delante de la bola, sin rozamiento y sin fugas. Una película que diga más contiene un error.',
  },
  symbol: {
    frames: 'fotogramas de la película',
    interval: 'tiempo entre fotogramas',
    duration: 'del primer fotograma al último',
    rate: 'cadencia de grabación',
    length: 'longitud conocida',
    lengthPixels: 'su longitud en la película',
    depth: 'su profundidad tras el vuelo',
    cameraDistance: 'distancia de la cámara',
    oneScale: 'escala',
    perPixel: 'escala',
    centrePixels: 'centro desde el plano de la boca, en la película',
    centre: 'lo mismo en metros',
    exposure: 'tiempo de exposición',
    blur: 'desenfoque a lo largo del vuelo',
    exitTime: 'el centro sale',
    burstTime: 'la membrana se abre',
    lead: 'adelanto de la membrana',
    startPlace: 'centro en el primer fotograma usado',
    endPlace: 'centro en el último',
    startTime: 'tiempo del primero',
    endTime: 'tiempo del último',
    meanSpeed: 'velocidad media entre ellos',
    exitVelocity: 'velocidad de salida',
    pressure: 'presión del aire',
    mass: 'masa de la bola',
    barrel: 'longitud del cañón',
    boreArea: 'sección del ánima',
    mostSpeed: 'lo máximo posible',
  },
  note: {
    footage: 'Del primer fotograma al último hay N − 1 intervalos, no N.',
    clock: 'La cadencia se conoce con {share}; igual, solo por esta causa, toda velocidad.',
    lines:
      'Esta cámara lee su imagen línea a línea, {line} cada una: la última línea va {whole} después de la primera.',
    plane: 'Aquí el rectángulo marcado fija la escala; la longitud conocida se compara con él.',
    lengths:
      '{count} longitudes conocidas se promedian según sus incertidumbres; juntas dan {scale}.',
    ball: 'Es el fotograma {frame}, el central de los usados.',
    seal: 'Ambos instantes comparten el reloj de la película; su correlación es {r}.',
    result: 'Llevada por el ajuste al plano de la boca: v = {speed}.',
    models: 'La película dice {speed}: {share} de eso.',
  },
  parts: {
    scale: 'De qué se compone la incertidumbre de la escala. Se suman los cuadrados: {u} en total.',
    result:
      'De qué se compone la incertidumbre de la velocidad, de mayor a menor. Se suman los cuadrados: {u} en total, como incertidumbre típica.',
    rest: 'todas las demás juntas',
  },
  mistakeIn: {
    footage: 'Se pierde un fotograma al grabar o copiar y nadie lo nota: la bola parece saltar.',
    clock:
      'Se toma por cadencia de grabación la de reproducción del archivo, o un ajuste de otro día.',
    rolling:
      'Un teléfono lee línea a línea, pero se le trata como si tomara cada imagen de una vez.',
    scale: 'La regla está sobre la mesa o en la pared, no en el plano del vuelo.',
    ball: 'Exposición larga para tener más luz: la bola se vuelve una estela y su centro, menos seguro.',
    seal: 'Una marca en algo detrás del tubo se toma por la boca: vista de lado, está en otro sitio.',
    result: 'La regla estaba detrás del vuelo, y la pequeña incertidumbre lo oculta.',
    models:
      'Se cree a una película que supera lo máximo, cuando su cadencia de grabación era errónea.',
  },
};
