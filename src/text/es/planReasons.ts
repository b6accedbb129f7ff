import type { Catalogue } from '../catalogue';

/** What a planned shot would not show well. */
export const planReasons: Catalogue['reasons'] = {
  planInsideMuzzleZone: {
    message:
      'El campo acaba a menos de tres diámetros de bola de la boca, donde no se pueden separar la resistencia del aire y la pérdida en la boca.',
    remedy: 'Amplíe el campo visual, o deje menos de él antes de la boca.',
  },
  planLengthOutOfView: {
    message: 'La longitud conocida no cabe en el campo visual.',
    remedy: 'Use una más corta, o amplíe el campo.',
  },
  planMuzzleOutside: {
    message: 'El plano de la boca queda fuera del campo visual.',
    remedy: 'Deje menos espacio antes de la boca, o amplíe el campo.',
  },
  planParallaxUnknown: {
    message:
      'Sin la distancia de la cámara, la profundidad de la longitud conocida no entra en la incertidumbre.',
    remedy: 'Mida del objetivo a la línea de vuelo.',
  },
  noModes: {
    message: 'No se ha anotado ningún modo.',
    remedy: 'Escriba una línea por modo: 12000 1024 x 256.',
  },
};
