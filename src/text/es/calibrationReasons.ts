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
  nonSquarePixels: {
    message:
      'Los píxeles de la película son {aspect} veces más anchos que altos; en una imagen tan deformada no se busca el disco de la bola.',
    remedy: 'Exporte el clip con píxeles cuadrados.',
  },
  muzzleOutside: {
    message:
      'El punto de la boca ({x}, {y}) queda fuera del fotograma de {width} x {height} píxeles.',
    remedy: 'Marque la boca dentro del fotograma.',
  },
  pointOutsideFilm: {
    message:
      'Se indica un lugar de la bola en el fotograma {frame}, pero la película acaba en el fotograma {last}.',
    remedy: 'Quite ese punto, o compruebe que esta es la grabación en la que se puso.',
  },
  ballTooSmall: {
    message: 'Con esta escala la bola mide {across} píxeles; hacen falta al menos {least}.',
    remedy: 'Compruebe la longitud conocida y el diámetro de la bola, o filme más de cerca.',
  },
  ballTooLarge: {
    message: 'Con esta escala la bola mide {across} píxeles, más que el fotograma.',
    remedy: 'Compruebe la longitud conocida y el diámetro de la bola.',
  },
  axisDisagrees: {
    message:
      'La dirección del vuelo indicada se aparta {degrees} grados de la trayectoria; las distancias están corregidas por ello.',
    remedy:
      'Deje que la dirección se determine con la trayectoria, o dibújela a lo largo del vuelo.',
  },
  ratesDisagree: {
    message:
      '{form, select, typed {La cadencia escrita es de {rate} fotogramas/s; el archivo indica {file}.} other {Las marcas de tiempo del archivo dan {file} fotogramas/s; la cadencia de grabación indicada es {rate}.}}',
    remedy:
      '{form, select, typed {Compruebe con un cronómetro o una lámpara filmados con cuál de las dos grabó realmente la cámara.} other {Si el clip se ralentizó al guardarlo, use la cadencia de grabación como base de tiempo.}}',
  },
  lampTooFast: {
    message:
      'Con la cadencia esperada la lámpara parpadea {times} veces por fotograma; hacen falta más de 2 fotogramas por parpadeo.',
    remedy: 'Use un cronómetro filmado.',
  },
  lampTooShort: {
    message: 'El clip muestra {flickers} parpadeos de la lámpara; hacen falta al menos {fewest}.',
    remedy: 'Filme la lámpara durante más tiempo.',
  },
  distancesDisagree: {
    message:
      'Según la distancia focal del objetivo, la línea de vuelo está a {told} m, pero se indican {stated} m; se usa la distancia focal.',
    remedy:
      'Mida del objetivo a la línea de vuelo y compruebe que el zum y el enfoque son los de la calibración del objetivo.',
  },
  notARectangle: {
    message:
      'Las cuatro esquinas se apartan {off} px de las de un rectángulo de {width} m por {height} m, con {cornerU} px indicados para cada una.',
    remedy:
      'Compruebe cada esquina, que la anchura y la altura no estén cambiadas, y la calibración del objetivo.',
  },
  edgeTellsLittle: {
    message:
      '{form, select, known {Según los bordes, la distorsión en las esquinas de la imagen se conoce solo con {u} px.} other {Los bordes no revelan la distorsión en las esquinas de la imagen.}}',
    remedy:
      'Marque bordes más largos y más lejos del centro, varios de ellos, o filme un tablero de ajedrez.',
  },
  edgeTooShort: {
    message:
      '{form, select, points {Un borde necesita al menos {fewest} puntos para que se vea su curvatura.} other {El borde está marcado a lo largo de {length} px; su curvatura se ve desde {shortest} px, mejor por toda la imagen.}}',
    remedy: 'Marque sus dos extremos más separados.',
  },
  edgeThroughCentre: {
    message:
      'El borde pasa a {distance} px del centro de la imagen, donde un objetivo deja rectas las líneas rectas.',
    remedy: 'Use un borde cercano a la parte superior o inferior de la imagen, o filme uno allí.',
  },
  tooFewBoards: {
    message:
      'El tablero se encontró en {boards, plural, =0 {ninguna imagen} one {# imagen} other {# imágenes}}; un objetivo necesita al menos {fewest}.',
    remedy:
      'Filme el tablero desde varios lados, inclinado de 20 a 40 grados y hasta las esquinas de la imagen.',
  },
  boardsDoNotFit: {
    message:
      'Las esquinas se apartan de un objetivo con dos términos radiales en {off} px de media.',
    remedy: 'Use un tablero plano, no cambie el enfoque ni el zum, y quite las imágenes borrosas.',
  },
  noBoard: {
    message: 'En la imagen {frame} no destaca ningún tablero de ajedrez.',
    remedy:
      'Muestre el tablero entero, iluminado por igual y enfocado, con casillas de al menos 10 píxeles de ancho.',
  },
  lengthTooUncertain: {
    message:
      'La longitud conocida {number} se indica con una incertidumbre tan grande como ella misma.',
    remedy:
      'Compruebe las incertidumbres de la longitud, sus extremos, su profundidad y la distancia de la cámara.',
  },
  zeroLength: {
    message: 'Los dos extremos de la longitud conocida {number} están en el mismo píxel.',
    remedy: 'Separe sus extremos y llévelos a las dos marcas.',
  },
  outsideLens: {
    message:
      '{form, select, nothing {El objetivo, tal como está indicado, no muestra nada de lo que queda a {distance} px de su centro.} other {El punto ({x}, {y}) está a {distance} px del centro del objetivo, donde la distorsión indicada pliega la imagen sobre sí misma.}}',
    remedy:
      '{form, select, nothing {Calibre el objetivo con vistas que lleguen hasta las esquinas.} other {Calibre el objetivo con vistas que lleguen hasta las esquinas, o mantenga las marcas y el vuelo más cerca del centro.}}',
  },
  beyondHorizon: {
    message: 'El punto ({x}, {y}) está en el horizonte del plano marcado o más allá.',
    remedy: 'Compruebe las cuatro esquinas del plano y su orden.',
  },
  planeDistance: {
    message: 'Ningún objetivo muestra desde {distance} m el plano tal como está marcado.',
    remedy:
      'Compruebe la distancia de la cámara, la anchura y la altura del plano, y sus esquinas.',
  },
  picturesOtherSize: {
    message:
      'Las imágenes tienen {width} por {height} píxeles, la película {filmWidth} por {filmHeight}: lo que revelan del objetivo no vale para ella.',
    remedy:
      'Tome las imágenes con la cámara ajustada como para el disparo: mismo tamaño, zum y enfoque.',
  },
  noTimeStamps: {
    message: '«{name}» no contiene marcas de tiempo propias.',
    remedy: 'Indique la cadencia con la que se grabó.',
  },
  cameraMoved: {
    message:
      '{form, select, moved {La escena inmóvil está a {distance} px de donde estaba en el disparo {shot} del mismo montaje ({across} en horizontal, {down} hacia abajo): la cámara se ha movido.} other {La cámara o la escena no están como en el disparo {shot} del mismo montaje. {because}}}',
    remedy:
      'Fije de nuevo la escala y la boca en esta película, o compruebe que pertenece a este montaje.',
  },
  sceneSizeDiffers: {
    message:
      'Los fotogramas tienen {width} x {height} px; los de antes tenían {widthBefore} x {heightBefore} px.',
  },
  sizeChanges: {
    message: 'No todos los fotogramas tienen el tamaño del primero, {width} x {height} px.',
    remedy: 'Corte el clip donde cambia el tamaño y use una parte.',
  },
  viewTooUncertain: {
    message:
      'Si el dato «{source}» se desplaza en su incertidumbre, el centro del fotograma {frame} no tiene lugar en el plano de vuelo.',
    remedy:
      'Calibre el objetivo o marque el plano con más exactitud, o rechace los fotogramas cercanos al borde de la imagen.',
  },
};
