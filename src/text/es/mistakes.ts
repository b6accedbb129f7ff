import type { English, SameShape } from '../catalogue';

export const mistakes: SameShape<English['mistakes']> = {
  title: 'Errores habituales y cuánto pesan',
  what: 'Un disparo de Launcher B, generado por el programa de síntesis de este proyecto: no es un disparo real. Cada error se cometió a propósito y la película se evaluó dos veces con esta herramienta, una bien y otra mal. Su tamaño es lo que salió; al lado está lo que espera una fórmula. Los valores van con el doble de su incertidumbre típica.',
  back: 'Volver al disparo',
  right: 'Bien',
  wrong: 'Mal',
  size: 'Tamaño del error',
  found: 'encontrado: {size}',
  expected: 'por fórmula: {size}',
  avoid: 'Cómo evitarlo.',
  rendered: 'sintético',
  formula: 'Fórmula',
  truth: 'Verdadero',
  framesUsed: '{frames, plural, one {# fotograma usado} other {# fotogramas usados}}',
  withSpeed: 'velocidad {speed}',
  warned: 'Con el error, esta herramienta avisó:',
  notWarned: 'Con el error, esta herramienta no dio ningún aviso.',
  blurLimit:
    'La fórmula cuenta solo el ruido de los píxeles, lo mínimo posible. Lo declarado crece más: un borde emborronado dice también menos de cómo está iluminada la bola y de cuánto mide su estela.',
  source: 'Fórmula deducida aquí; sin otra fuente.',
  lines: { muzzle: 'plano de la boca', mark: 'marca tomada por él' },
  header: 'Errores',
  quantity: {
    speed: 'Velocidad de salida',
    exitTime: 'Instante de salida',
    centreU: 'Incertidumbre de un centro',
  },
  list: 'En esta página',
  wrongRate: {
    title: 'Cadencia de grabación errónea',
    what: 'Se grabó a {rate}, pero se escribió {typed}: un ajuste de otro día. Las imágenes son las mismas; solo está mal el tiempo entre ellas. Con la cadencia de reproducción del archivo, a menudo 30 fotogramas/s, la velocidad saldría cientos de veces menor.',
    avoid:
      'Anote la cadencia con cada disparo. Grabe de vez en cuando una lámpara que parpadee o un cronómetro y compárela con él (Tiempo, comprobación de la cadencia).',
    formula: 'cadencia escrita / cadencia real − 1',
    both: 'Uno de cada tres fotogramas del disparo en una sola imagen. Bien, las bolas distan 0,25 ms; con la cadencia errónea, 0,30 ms.',
  },
  lostFrames: {
    title: 'Fotogramas perdidos',
    what: 'No se grabó un fotograma después del {after}. La bola salta: da dos pasos en lo que cuenta como uno.',
    avoid:
      'Busque un escalón en la imagen de trazas e indique lo que falta (Tiempo, fotogramas perdidos). Lea el contador de la cámara y copie archivos, no pantallas.',
    formula:
      '6 · n₁ · n₂ · k / (N · (N² − 1)), con k fotogramas perdidos entre los primeros n₁ y los últimos n₂ de N centros',
    right: 'Uno de cada tres fotogramas de la película entera.',
    wrong: 'Lo mismo con un fotograma perdido: un hueco es mayor.',
  },
  wrongPlane: {
    title: 'Escala en otro plano',
    what: 'La regla está {depth} detrás del vuelo, vista desde {distance}, y se toma como si estuviera en su plano. Parece menor, así que un píxel parece tener más metros de los que tiene.',
    avoid:
      'Ponga la regla por donde vuela la bola. Si no se puede, mida su profundidad y la distancia de la cámara e indique ambas; aleje la cámara y use más aumento.',
    formula: 'profundidad / distancia de la cámara',
    right: 'La regla en el plano del vuelo.',
    wrong: 'La misma regla detrás.',
  },
  parallax: {
    title: 'Paralaje',
    what: 'Una marca {depth} detrás del vuelo, a la altura de la boca, se toma por el plano de la boca. La cámara, a {distance}, la mira de lado y la ve más cerca del centro de la imagen. La velocidad queda igual; el instante de salida, y con él el adelanto, no.',
    avoid:
      'Marque la boca en el propio extremo del tubo, a la altura del ánima. Ponga la cámara justo delante de la boca si lo que más importa es el instante de salida.',
    formula: 'distancia lateral × profundidad / (distancia de la cámara + profundidad) / velocidad',
    right: 'La marca en el plano del vuelo queda bajo la boca.',
    wrong: 'La misma marca detrás se ve en otro sitio.',
  },
  rollingShutter: {
    title: 'Obturador rodante',
    what: 'Un teléfono lee su imagen línea a línea, {lineTime} cada una, aquí en contra del vuelo. Tratado como si leyera todas a la vez, la velocidad sale mal: de un fotograma a otro la bola ha pasado a líneas que se leen antes.',
    avoid:
      'Mida el tiempo por línea con una lámpara que parpadee e indíquelo (Tiempo, obturador rodante), o gire el teléfono para que lea a través del vuelo.',
    formula:
      '1 / (1 + velocidad × tiempo por línea / escala) − 1; a favor del vuelo, − en lugar de +',
    right: 'Todas las líneas a la vez: uno de cada tres fotogramas.',
    wrong: 'Línea a línea, en los mismos instantes: las bolas están más juntas.',
  },
  blur: {
    title: 'Desenfoque de movimiento',
    what: 'La exposición es de {long} en vez de {short}: más luz, pero la bola se alarga en el vuelo. Su centro sigue donde estaba, así que la velocidad no se desplaza; pero cada centro se conoce peor.',
    avoid:
      'Que la bola no avance más de una décima de su diámetro con el obturador abierto, y saque la luz de lámparas.',
    formula: 'raíz del cuadrado de la pendiente de un borde nítido entre el de uno emborronado',
    right: 'Exposición corta.',
    wrong: 'Exposición larga.',
  },
};
