import type { Catalogue } from '../catalogue';

/** What a launch model needs, and where it gives no answer. */
export const launchReasons: Catalogue['reasons'] = {
  fitNotSettled: {
    message:
      'L’ajustement ne s’est pas stabilisé : avec ce modèle, aucune valeur des données libres ne s’approche des tirs, ou plusieurs y parviennent aussi bien.',
    remedy:
      'Essayez un autre modèle, libérez d’autres données, ou faites des tirs à plus de longueurs et de pressions.',
  },
  fitNotStarted: {
    message:
      'Avec les données indiquées, le modèle ne laisse pas sortir la bille d’au moins un tir ; il n’y a donc pas de point de départ.',
    remedy: 'Regardez ce tir à l’étape Modèles, ou ne le comptez pas.',
  },
  freeInputsNotSeparable: {
    message:
      'Les tirs ne permettent pas de séparer les données libres : l’une ne change rien, ou deux changent tout de la même façon.',
    remedy:
      'Libérez moins de données, utilisez les avances, ou faites des tirs à plus de longueurs et de pressions.',
  },
  noLauncher: {
    message:
      'Le tir n’indique pas de lanceur ; aucun modèle ne peut donc dire à quelle vitesse il devrait tirer.',
    remedy:
      'Indiquez le diamètre de l’alésage, la longueur du tube, la pression résiduelle et la pression de rupture de la membrane.',
  },
  noResidualPressure: {
    message: 'La pression restée dans le tube n’est pas indiquée.',
    remedy: 'Indiquez la pression résiduelle absolue que montrait le manomètre avant le tir.',
  },
  noSealBurstPressure: {
    message: 'La pression qui ouvre la membrane de bouche n’est pas indiquée.',
    remedy:
      'Indiquez de combien la pression intérieure dépasse celle du dehors quand la membrane s’ouvre, mesurée sur des membranes du même modèle.',
  },
  noSeriesLauncher: {
    message:
      'Aucun tir compté n’indique son lanceur en entier ; aucun modèle ne peut donc être tracé à côté.',
    remedy:
      'Indiquez l’alésage, la longueur du tube, la pression résiduelle et la pression de rupture de la membrane de l’un d’eux à son étape Modèles.',
  },
};
