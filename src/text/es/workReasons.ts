import type { Catalogue } from '../catalogue';

/** Files that cannot be used, work that was not kept and threads that stopped. */
export const workReasons: Catalogue['reasons'] = {
  cancelled: {
    message: 'El trabajo se canceló.',
  },
  draftNotKept: {
    message: 'El navegador no conservó los datos de este disparo.',
    remedy: 'Guarde el archivo de disparo antes de cerrar la ventana.',
  },
  notDraft: {
    message: 'Los datos guardados no se pueden leer.',
  },
};
