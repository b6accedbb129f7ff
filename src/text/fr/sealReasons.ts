import type { Catalogue } from '../catalogue';

/** What film and sound do not tell of the burst. */
export const sealReasons: Catalogue['reasons'] = {
  bulgeNotSeen: {
    message:
      'Aucune image d’avant la déchirure ne montre la membrane hors de sa position de repos.',
  },
  bulgeTooFaint: {
    message: 'La membrane se détache trop peu de la scène pour être suivie.',
  },
  onsetBeforeClip: {
    message: 'La membrane bouge déjà quand le clip commence.',
  },
  restHidden: {
    message:
      'La scène derrière la membrane diffère de la membrane au repos de plus que son premier mouvement.',
  },
  burstNotSeen: {
    message: 'La membrane bouge, mais aucune image ne la montre déchirée.',
    remedy:
      'Vérifiez la zone de la membrane, ou indiquez à la main les images qui entourent la rupture.',
  },
  sealOpenFromStart: {
    message: 'Des morceaux de la membrane volent déjà dans les premières images.',
    remedy: 'Utilisez un clip qui commence avant la rupture de la membrane.',
  },
  sealRestHidden: {
    message:
      'Les premières images diffèrent de la scène à laquelle la membrane est comparée, ce qui cache le bombement.',
    remedy:
      'Utilisez un clip qui commence avec la membrane au repos, ou indiquez à la main les images qui entourent la rupture.',
  },
  noSealInView: {
    message: 'Il est indiqué qu’aucune membrane de bouche n’est dans le champ.',
  },
  rearSealPlaneMissing: {
    message:
      'La membrane arrière est indiquée sans son plan, et rien d’autre ne dit où il se trouve.',
    remedy: 'Indiquez un point du plan de la membrane arrière.',
  },
  noBackstop: {
    message: 'Le tir n’indique pas de butée.',
  },
  impactBeforeExit: {
    message: 'D’après le son, la bille frappe la butée avant de quitter la bouche.',
    remedy:
      'Vérifiez le décalage entre le son et l’image, et les distances du microphone et de la butée.',
  },
  soundUnplaced: {
    message:
      'Le film ne montre ni la rupture ni la sortie ; le premier son fort de la piste est donc pris pour la rupture.',
    remedy: 'Écoutez la piste : la perforation d’une membrane arrière s’entend avant la rupture.',
  },
};
