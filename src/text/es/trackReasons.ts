import type { Catalogue } from '../catalogue';

/** Where the ball was not found or followed, and how it turns. */
export const trackReasons: Catalogue['reasons'] = {
  againstDirection: {
    message: 'Se ve una bola, pero vuela en otra dirección que la indicada.',
    remedy:
      'Gire la dirección del vuelo para que siga el vuelo, o deje que se determine con la trayectoria.',
  },
  besideMuzzle: {
    message: 'Se ve una bola, pero su trayectoria no pasa por la boca marcada.',
    remedy: 'Marque la boca donde el vuelo sale de ella.',
  },
  lookDisagrees: {
    message:
      'Con el aspecto de la bola que revela la propia película, se la encuentra en otro sitio en casi todos los fotogramas: algo parecido va con ella, por ejemplo su sombra.',
    remedy: 'Vaya al fotograma: ponga el centro a mano si la bola se ve allí, o exclúyalo.',
  },
  tumbles: {
    message:
      'Lo que se siguió solo es redondo de vez en cuando, como un trozo plano que da vueltas: no es la bola.',
    remedy: 'Indique en un fotograma cuál es la bola, o dibuje la zona de vuelo alrededor de ella.',
  },
  noMark: {
    message:
      'En la cara de la bola no se ve girar nada: no lleva ninguna marca que destaque, o apenas gira.',
    remedy:
      'Dibuje en la bola un punto o una línea oscura, apartada del centro visto desde la cámara.',
  },
  turnsTooLittle: {
    message:
      'Lo que cambia en la cara de la bola de un fotograma a otro es demasiado leve para distinguir una marca que gira de la luz que recibe.',
    remedy:
      'Use como marca un punto oscuro, que la luz no puede producir, o filme un tramo más largo.',
  },
  spinOutOfPlane: {
    message:
      'La cara de la bola cambia de un fotograma a otro, pero no como lo hace una marca que gira en el plano de la imagen: gira en torno a otro eje, o algo pasa por delante.',
    remedy:
      'Solo puede medirse el giro en torno a la línea de visión; coloque la marca y la cámara para ello.',
  },
  noBall: {
    message:
      '{form, select, noDisc {El contorno del fotograma {frame} cerca de ({x}, {y}) no se ajusta a ningún disco.} noOutline {En el fotograma {frame}, cerca de ({x}, {y}), no destaca ningún contorno del tamaño de la bola.} unsteady {Lo que destaca en el fotograma {frame} cerca de ({x}, {y}) no tiene una forma de disco estable.} elsewhere {El disco del fotograma {frame} cerca de ({x}, {y}) no está donde los demás fotogramas tienen la bola, o no es tan claro como ella.} unmeasured {La bola no se midió en este fotograma.} other {No se encontró ninguna bola: {search, select, nothing {en ninguno de los {frames} fotogramas destaca del fondo algo del tamaño de la bola.} other {nada del tamaño de la bola se mueve de forma regular por la película, aunque {seen} de {frames} fotogramas muestran algo de ese tamaño.}}{search, select, nearest { Lo más parecido: {because}} other {}}}}',
    remedy:
      '{form, select, noDisc {Ponga el centro a mano o excluya el fotograma.} noOutline {Vaya al fotograma: ponga el centro a mano si la bola está allí.} unsteady {Ponga el centro a mano o excluya el fotograma.} elsewhere {Vaya al fotograma: ponga el centro a mano si la bola se ve allí, o exclúyalo.} unmeasured {Ponga el centro a mano o mida de nuevo.} other {Compruebe la longitud conocida y el diámetro de la bola (dan el tamaño buscado), la zona de vuelo y que el clip muestre la bola; o ponga su centro a mano en tres fotogramas o más.}}',
  },
  lowContrast: {
    message:
      'En el fotograma {frame}, cerca de ({x}, {y}), la bola difiere del fondo en solo {grey} niveles de gris.',
    remedy: 'Ilumine la bola u oscurezca el fondo; excluya este fotograma.',
  },
  radiusMismatch: {
    message:
      'El disco del fotograma {frame} cerca de ({x}, {y}) tiene un radio de {found} px; por el diámetro de la bola y la escala se esperan {expected} px.',
    remedy:
      'Compruebe el diámetro de la bola y la longitud conocida; si ambos son correctos, esto no es la bola.',
  },
  atFrameEdge: {
    message:
      'En el fotograma {frame}, cerca de ({x}, {y}), el borde de la imagen deja ver {form, select, little {demasiado poco} other {solo el {share}}} del contorno de la bola.',
    remedy: 'Excluya este fotograma; otros muestran más de la bola.',
  },
  arcTooShort: {
    message:
      'En el fotograma {frame}, cerca de ({x}, {y}), se ve {form, select, little {demasiado poco} other {solo el {share}}} del contorno de la bola.',
    remedy: 'Excluya este fotograma; otros muestran más de la bola.',
  },
  besideSeeds: {
    message:
      '{form, select, thing {Algo en los fotogramas {first} a {last} no pasa por donde se dijo que está la bola.} other {Se ve una bola, pero su trayectoria no pasa por donde se dijo que está.}}',
    remedy: 'Mueva sobre la bola los lugares indicados como bola, o quítelos.',
  },
  standsStill: {
    message:
      'Algo de aproximadamente el tamaño correcto en los fotogramas {first} a {last} apenas se mueve.',
  },
  otherPath: {
    message:
      'Algo de aproximadamente el tamaño correcto en los fotogramas {first} a {last} {form, select, tooFast {se mueve más rápido de lo que puede la bola} otherWay {se mueve en otra dirección que la indicada} other {no viene de la boca}}.',
  },
  notRound: {
    message:
      'Algo que se mueve en los fotogramas {first} a {last} no tiene el tamaño ni la forma redonda de la bola (semejanza {likeness}).',
  },
  otherSize: {
    message:
      'Algo redondo en los fotogramas {first} a {last} tiene {times} veces el diámetro de la bola.',
  },
  tooFewSightings: {
    message:
      'Algo del tamaño correcto se ve solo en {count} de los {span} fotogramas del {first} al {last}.',
  },
  unsteady: {
    message:
      'Algo del tamaño correcto en los fotogramas {first} a {last} cambia de velocidad demasiado para una bola en vuelo libre.',
  },
  slowsTooMuch: {
    message:
      'Algo del tamaño correcto en los fotogramas {first} a {last} pierde el {change} de su velocidad, más de lo que el aire puede quitar a la bola.',
  },
  twoBalls: {
    message:
      'Dos objetos se mueven como la bola y se parecen a ella: uno se ve en los fotogramas {first} a {last}, el otro en los {otherFirst} a {otherLast}.',
    remedy:
      'Indique en un fotograma cuál de ellos es la bola, o dibuje la zona de vuelo alrededor de ella.',
  },
  fewerFrames: {
    message:
      'Otro objeto sigue su propia trayectoria durante {frames, plural, one {# fotograma} other {# fotogramas}}, menos que los {ball} de la bola.',
  },
  lessAlike: {
    message:
      'Otro objeto en los fotogramas {first} a {last} sigue su propia trayectoria, pero se parece menos a la bola: en tamaño, redondez o nitidez.',
  },
  tooUncertain: {
    message:
      '{form, select, all {En el fotograma {frame} y en la mayoría de los demás, el centro se conoce solo con {u} px: un reflejo, una sombra o niebla junto a la bola oculta dónde acaba.} other {En el fotograma {frame} el centro se conoce solo con {u} px; en la mitad de los fotogramas, con {usual} px.}}',
    remedy: 'Vaya al fotograma: ponga el centro a mano si la bola se ve allí, o exclúyalo.',
  },
  ballBroke: {
    message:
      'La bola está entera hasta el fotograma {whole}; desde el fotograma {broken} hay trozos.',
    remedy: 'Se usan los fotogramas anteriores; filme más del vuelo antes de la rotura de la bola.',
  },
  offPath: {
    message:
      '{form, select, strayed {Lo que se midió en el fotograma {frame} no es lo que se siguió: está a más de {off} px de ello.} along {Lo que se midió en el fotograma {frame} se aparta {off} px de la trayectoria de los demás fotogramas, a lo largo del vuelo.} other {Lo que se midió en el fotograma {frame} se aparta {off} px de la trayectoria de los demás fotogramas, de través al vuelo.}}',
    remedy: 'Vaya al fotograma: ponga el centro a mano si la bola se ve allí, o exclúyalo.',
  },
  fewFaces: {
    message:
      'La cara entera de la bola se ve en {frames, plural, =0 {ningún fotograma} one {# fotograma} other {# fotogramas}}; para saber cómo gira hacen falta al menos {fewest}.',
    remedy: 'Filme un tramo más largo de vuelo libre.',
  },
  markSmeared: {
    message:
      'Durante una exposición la bola se mueve más de {most} veces su radio, lo que emborrona una marca en ella.',
    remedy: 'Acorte la exposición y añada luz.',
  },
  spinAmbiguous: {
    message:
      'La marca se ve igual en todos los fotogramas si la bola gira a {other} en vez de {rate} rad/s; se indica el giro más lento.',
    remedy:
      'Filme con mayor cadencia, o use una marca que solo se vea igual tras una vuelta completa: un único punto.',
  },
};
