import type { Catalogue } from '../catalogue';

/** What a planned shot would not show well. */
export const planReasons: Catalogue['reasons'] = {
  planInsideMuzzleZone: {
    message:
      'Le champ finit à moins de trois diamètres de bille de la bouche, où la traînée et la perte à la bouche ne peuvent être séparées.',
    remedy: 'Élargissez le champ, ou laissez-en moins avant la bouche.',
  },
  planLengthOutOfView: {
    message: 'La longueur connue ne tient pas dans le champ.',
    remedy: 'Prenez-en une plus courte, ou élargissez le champ.',
  },
  planMuzzleOutside: {
    message: 'Le plan de bouche se trouve hors du champ.',
    remedy: 'Laissez moins de place avant la bouche, ou élargissez le champ.',
  },
  planParallaxUnknown: {
    message:
      'Sans la distance de la caméra, la profondeur de la longueur connue n’entre pas dans l’incertitude.',
    remedy: 'Mesurez de l’objectif à la ligne de vol.',
  },
  noModes: {
    message: 'Aucun mode n’est indiqué.',
    remedy: 'Écrivez une ligne par mode : 12000 1024 x 256.',
  },
};
