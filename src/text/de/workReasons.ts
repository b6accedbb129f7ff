import type { Catalogue } from '../catalogue';

/** Files that cannot be used, work that was not kept and threads that stopped. */
export const workReasons: Catalogue['reasons'] = {
  cancelled: {
    message: 'Die Arbeit wurde abgebrochen.',
  },
  draftNotKept: {
    message: 'Der Browser hat die Eingaben dieses Schusses nicht behalten.',
    remedy: 'Speichern Sie die Schussdatei, bevor Sie das Fenster schließen.',
  },
  notDraft: {
    message: 'Die gesicherten Eingaben lassen sich nicht lesen.',
  },
};
