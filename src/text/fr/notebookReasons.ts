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
      'Le résultat provient d’un autre enregistrement que le tir de ce nom ; le tir reste noté comme non dépouillé.',
    remedy: 'Dépouillez de nouveau le tir.',
  },
  resultWithoutShot: {
    message:
      'Aucun fichier de tir de ce nom n’accompagne le résultat ; ce qu’il partage avec d’autres n’est donc pas connu.',
    remedy: 'Choisissez les deux fichiers, NOM.shot.json et NOM.result.json.',
  },
};
