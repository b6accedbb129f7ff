import type { Catalogue } from '../catalogue';

/** Numbers and lines that cannot be read. */
export const inputReasons: Catalogue['reasons'] = {
  decimalComma: {
    message: '« {typed} » contient une virgule, qui pourrait signifier deux choses.',
    remedy:
      'Écrivez les milliers avec une espace ou sans rien, et une seule virgule décimale : 7,87 ou 12 000.',
  },
  modeUnreadable: {
    message: 'La ligne « {words} » n’est pas un mode de la caméra.',
    remedy: 'Écrivez les images par seconde, la largeur et la hauteur : 12000 1024 x 256.',
  },
  tooLarge: {
    message: 'La valeur est trop grande pour un nombre.',
  },
};
