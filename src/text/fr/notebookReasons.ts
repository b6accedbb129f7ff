import type { Catalogue } from '../catalogue';

/** What is wrong with a table or a shot of the notebook. */
export const notebookReasons: Catalogue['reasons'] = {
  csvEmpty: {
    message: 'Le tableau n’a aucune ligne sous l’en-tête.',
    remedy: 'Écrivez une ligne par tir.',
  },
  notInTable: {
    message: 'Le tableau ne l’indique pas.',
  },
  notReduced: {
    message: 'Ce tir n’a pas encore été dépouillé.',
    remedy: 'Ouvrez son film, mesurez-le et ajoutez de nouveau le tir au cahier.',
  },
  resultOfOtherFootage: {
    message:
      'Le résultat provient d’un autre enregistrement que le tir de ce nom ; le tir reste noté comme non dépouillé.',
    remedy: 'Dépouillez de nouveau le tir.',
  },
  resultWithoutShot: {
    message:
      'Aucun fichier de tir de ce nom n’accompagne le résultat ; ce qu’il partage avec d’autres n’est donc pas connu.',
    remedy: 'Choisissez les deux fichiers, NOM.shot.json et NOM.result.json.',
  },
  csvColumnMissing: {
    message: 'Le tableau n’a pas de colonne « {column} ».',
    remedy: 'Nommez-la dans l’en-tête, avec son unité : « {example} ».',
  },
  csvColumnTwice: {
    message: 'La colonne « {column} » figure deux fois.',
    remedy: 'Retirez l’une des deux.',
  },
  csvColumnsUnknown: {
    message: 'Les colonnes d’autres noms n’ont pas été reprises : {columns}.',
    remedy: 'Enregistrez un tableau d’ici pour voir les noms connus.',
  },
  csvNameTwice: {
    message: 'Ligne {row} : un tir nommé « {name} » figure déjà plus haut.',
    remedy: 'Donnez à chaque tir un nom à lui.',
  },
  csvNoName: {
    message: 'Ligne {row} : le tir n’a pas de nom.',
    remedy: 'Remplissez la colonne « {column} ».',
  },
  csvNoUncertainty: {
    message: 'Ligne {row} : à côté de « {column} » ne figure aucune incertitude-type de 0 ou plus.',
    remedy: 'Remplissez la colonne « {ofU} ».',
  },
  csvNumber: {
    message: 'Ligne {row}, colonne « {column} » : « {typed} » n’est pas un nombre.',
    remedy: 'Écrivez les nombres du tableau avec un point décimal et sans unité : 181.3.',
  },
  csvRowLength: {
    message: 'La ligne {row} a {cells} cellules, l’en-tête {header}.',
    remedy: 'Cherchez-y, ou au-dessus, une virgule manquante ou un guillemet non fermé.',
  },
  csvUnit: {
    message:
      '{form, select, none {La colonne « {column} » n’indique pas d’unité.} other {La colonne « {column} » est en « {symbol} », qui n’est pas une unité possible pour elle.}}',
    remedy: 'Écrivez-la après une virgule ; l’une de celles-ci : {known}.',
  },
  shotWithoutUncertainty: {
    message:
      '{form, select, stated {Le tir {shot} n’indique aucune incertitude propre par laquelle le pondérer.} budget {Le bilan de {shot} ne contient rien de propre au tir par quoi le pondérer.} other {Le tir {shot} n’a pas de valeur avec une incertitude propre supérieure à zéro, par laquelle les tirs sont pondérés.}}',
    remedy:
      '{form, select, stated {Indiquez-en une, ou écartez le tir.} budget {Dépouillez de nouveau le tir.} other {Regardez le bilan de ce tir, ou écartez-le.}}',
  },
  tooFewShots: {
    message:
      '{shots, plural, =0 {Sans tir} one {Avec # tir} other {Avec # tirs}}, aucune dispersion ne se voit ; il en faut au moins {fewest}.',
    remedy: 'Ajoutez des tirs avec une vitesse de sortie.',
  },
};
