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
};
