import type { Catalogue } from '../catalogue';
import { calibrationReasons } from './calibrationReasons';
import { checks } from './checks';
import { filmReasons } from './filmReasons';
import { footageReasons } from './footageReasons';
import { inputReasons } from './inputReasons';
import { launchReasons } from './launchReasons';
import { notebookReasons } from './notebookReasons';
import { planReasons } from './planReasons';
import { resultReasons } from './resultReasons';
import { sealReasons } from './sealReasons';
import { trackReasons } from './trackReasons';
import { workReasons } from './workReasons';

export const reasons: Catalogue['reasons'] = {
  ...checks,
  ...calibrationReasons,
  ...filmReasons,
  ...footageReasons,
  ...inputReasons,
  ...launchReasons,
  ...notebookReasons,
  ...planReasons,
  ...resultReasons,
  ...sealReasons,
  ...trackReasons,
  ...workReasons,
  noRate: {
    message: 'Aún no se conoce la cadencia de grabación.',
    remedy:
      'Escriba la cadencia ajustada en la cámara; la que figura en el archivo es a menudo solo la de reproducción.',
  },
  noLength: {
    message: 'Aún no se ha dibujado ninguna longitud conocida.',
    remedy:
      'Trace en el plano de vuelo una línea entre dos marcas cuya distancia se conozca, o marque un rectángulo de tamaño conocido.',
  },
  lengthUnstated: {
    message: 'La longitud {number} está dibujada, pero falta su valor.',
    remedy: 'Escriba la distancia entre las dos marcas o quite la línea.',
  },
  planeUnstated: {
    message: 'El plano está marcado, pero falta su anchura o su altura.',
    remedy: 'Escriba ambos lados del rectángulo o quítelo.',
  },
  noMuzzle: {
    message: 'Aún no se ha marcado el plano de la boca.',
    remedy: 'Marque el extremo del tubo en la película: allí se indica la velocidad de salida.',
  },
  lengthsDisagree: {
    message:
      'Las longitudes conocidas discrepan más de lo que permiten sus incertidumbres (ji cuadrado {chiSquare} para {dof}).',
    remedy:
      'Compruebe los extremos y el valor de cada longitud, y que todas estén en el plano de vuelo.',
  },
  planeDisagrees: {
    message:
      'Las longitudes conocidas y el plano marcado discrepan más de lo que permiten sus incertidumbres (ji cuadrado {chiSquare} para {dof}); el plano fija la escala.',
    remedy:
      'Compruebe las esquinas, la anchura y la altura del plano, los extremos de cada longitud y a qué profundidad está cada una.',
  },
  timestampsUneven: {
    message:
      'Las marcas de tiempo del archivo son desiguales ({gaps, plural, one {# hueco} other {# huecos}}), pero se usa una cadencia uniforme.',
    remedy:
      'Para un clip de teléfono use las marcas de tiempo del archivo; si no, indique los fotogramas perdidos.',
  },
  framesLost: {
    message:
      '{form, select, jumps {La bola salta entre fotogramas ({between}): parece que ahí se perdieron fotogramas.} other {Las marcas de tiempo dejan sitio para fotogramas perdidos en {places, plural, one {# lugar} other {# lugares}}; sus tiempos se mantienen como se indican.}}',
    remedy:
      '{form, select, jumps {Indique los fotogramas perdidos en el paso Tiempo.} other {Nada que hacer si la cámara perdió fotogramas; el ajuste usa los tiempos indicados.}}',
  },
  playbackRateSuspected: {
    message: 'Las marcas de tiempo dan {rate} fotogramas/s, una cadencia de reproducción habitual.',
    remedy:
      'Si la cámara grabó más rápido, escriba su cadencia de grabación: todas las velocidades son proporcionales a ella.',
  },
  droppedOutside: {
    message:
      'Se indican fotogramas perdidos tras el fotograma {after}, pero la película acaba en el fotograma {last}.',
    remedy: 'Corrija la lista de fotogramas perdidos.',
  },
  noTimestamps: {
    message: 'El archivo no contiene marcas de tiempo propias.',
    remedy: 'Escriba en su lugar la cadencia de grabación.',
  },
  timestampsNotRising: {
    message: 'Las marcas de tiempo del archivo no crecen en el fotograma {frame}.',
    remedy: 'Escriba en su lugar la cadencia de grabación.',
  },
  empty: {
    message: 'Falta un dato.',
    remedy: 'Escriba un número, con su unidad si no es la que se muestra.',
  },
  notANumber: {
    message: '«{typed}» no es un número.',
    remedy: 'Escriba un número, con su unidad si no es la que se muestra.',
  },
  decimalOrThousands: {
    message: '«{typed}» puede leerse con millares o con decimales.',
    remedy: 'Escriba los decimales con coma y los millares con espacio o sin nada: 7,87 o 12 000.',
  },
  unknownUnit: {
    message: '«{unit}» no es aquí una unidad posible.',
    remedy: '{known, select, no {Escriba solo el número.} other {Use una de estas: {known}.}}',
  },
  divisionByZero: {
    message: '«{typed}» divide entre cero.',
    remedy: 'Escriba un denominador distinto de cero.',
  },
  notPositive: {
    message: 'El valor debe ser mayor que 0; {value} no lo es.',
  },
  negative: {
    message: 'El valor no puede ser negativo; {value} lo es.',
  },
  notWhole: {
    message: 'El valor debe ser un número entero.',
  },
  outOfRange: {
    message:
      'El valor debe estar {sides, select, least {en {least} o más} most {en {most} o menos} other {entre {least} y {most}}}; {value} no lo está.',
  },
  earlierInputs: {
    message:
      'Se guardaron datos para esta grabación el {savedAt, date, long} a las {savedAt, time, short}.',
    remedy: 'Recupérelos, o continúe tal como está.',
  },
};
