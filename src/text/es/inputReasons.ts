import type { Catalogue } from '../catalogue';

/** Numbers and lines that cannot be read. */
export const inputReasons: Catalogue['reasons'] = {
  decimalComma: {
    message: '«{typed}» tiene una coma, que podría significar dos cosas.',
    remedy: 'Escriba los millares con espacio o sin nada, y una sola coma decimal: 7,87 o 12 000.',
  },
  modeUnreadable: {
    message: 'La línea «{words}» no es un modo de la cámara.',
    remedy: 'Escriba los fotogramas por segundo, la anchura y la altura: 12000 1024 x 256.',
  },
  tooLarge: {
    message: 'El valor es demasiado grande para un número.',
  },
};
