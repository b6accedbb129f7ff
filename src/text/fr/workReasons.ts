import type { Catalogue } from '../catalogue';

/** Files that cannot be used, work that was not kept and threads that stopped. */
export const workReasons: Catalogue['reasons'] = {
  cancelled: {
    message: 'Le travail a été annulé.',
  },
  draftNotKept: {
    message: 'Le navigateur n’a pas gardé les données de ce tir.',
    remedy: 'Enregistrez le fichier de tir avant de fermer la fenêtre.',
  },
  notDraft: {
    message: 'Les données gardées ne peuvent être lues.',
  },
};
