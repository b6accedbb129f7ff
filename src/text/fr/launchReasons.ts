import type { Catalogue } from '../catalogue';

/** What a launch model needs, and where it gives no answer. */
export const launchReasons: Catalogue['reasons'] = {
  fitNotSettled: {
    message:
      'L’ajustement ne s’est pas stabilisé : avec ce modèle, aucune valeur des données libres ne s’approche des tirs, ou plusieurs y parviennent aussi bien.',
    remedy:
      'Essayez un autre modèle, libérez d’autres données, ou faites des tirs à plus de longueurs et de pressions.',
  },
  fitNotStarted: {
    message:
      'Avec les données indiquées, le modèle ne laisse pas sortir la bille d’au moins un tir ; il n’y a donc pas de point de départ.',
    remedy: 'Regardez ce tir à l’étape Modèles, ou ne le comptez pas.',
  },
  freeInputsNotSeparable: {
    message:
      'Les tirs ne permettent pas de séparer les données libres : l’une ne change rien, ou deux changent tout de la même façon.',
    remedy:
      'Libérez moins de données, utilisez les avances, ou faites des tirs à plus de longueurs et de pressions.',
  },
  noLauncher: {
    message:
      'Le tir n’indique pas de lanceur ; aucun modèle ne peut donc dire à quelle vitesse il devrait tirer.',
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
      'Aucun tir compté n’indique son lanceur en entier ; aucun modèle ne peut donc être tracé à côté.',
    remedy:
      'Indiquez l’alésage, la longueur du tube, la pression résiduelle et la pression de rupture de la membrane de l’un d’eux à son étape Modèles.',
  },
  badLauncher: {
    message:
      'Le lanceur ne peut être calculé : {form, select, notPositive {« {name} » vaut {value}.} negative {« {name} » vaut {value}.} discharge {le coefficient de décharge du jeu vaut {value}.} tooWide {la bille est plus large que l’alésage.} air {la pression, la température ou l’humidité de l’air ne peuvent être ainsi.} vapour {de l’air à {temperature} K ne peut contenir autant de vapeur.} residual {la pression résiduelle n’est pas inférieure à celle de l’air extérieur.} opens {la pression résiduelle ouvre la membrane de bouche avant le tir.} other {la bille part à {position} mm de la membrane arrière.}}',
    remedy:
      '{form, select, notPositive {Indiquez un nombre supérieur à 0, en mètres ou en kilogrammes.} negative {Indiquez 0 ou un nombre supérieur, en unités SI.} discharge {Un coefficient de décharge va de 0 à 1.} tooWide {Vérifiez les deux diamètres et leurs unités.} air {Indiquez des pascals, des kelvins et une humidité de 0 à 1.} vapour {Vérifiez sa température et son humidité.} residual {Indiquez la pression absolue restée dans le tube.} opens {La pression de rupture de la membrane est ce dont la pression intérieure doit dépasser celle du dehors.} other {La position de départ est celle du centre : au moins un demi-diamètre de chaque membrane.}}',
  },
  ballDoesNotLeave: {
    message:
      '{form, select, rests {Selon ce modèle, la bille ne quitte pas le tube : après {time} ms, elle est à {position} mm de la membrane arrière.} other {Selon ce modèle, la bille ne quitte pas le tube.}}',
    remedy:
      'Regardez la pression résiduelle, la pression de rupture de la membrane et les frottements.',
  },
  gapNotClosed: {
    message:
      'Aucune valeur de « {source} » qu’un lanceur puisse avoir ne donne la vitesse mesurée.',
  },
  gasStateLost: {
    message:
      'La dynamique des gaz a perdu l’état du gaz dans la cellule {cell} sur {cells} : un vide s’y est formé.',
    remedy: 'Regardez le lanceur : pressions, masses et longueurs doivent être celles d’un vrai.',
  },
  modelNotConverged: {
    message: 'La dynamique des gaz change encore de plus de {change} avec {cells} cellules.',
    remedy: 'Regardez le lanceur : une bille qui sort à peine n’a pas de vitesse établie.',
  },
  predictionBent: {
    message:
      'La prédiction ne suit pas « {source} » en ligne droite sur son incertitude : sa propre incertitude est approximative.',
    remedy: 'Indiquez « {source} » plus précisément.',
  },
  inputTooUncertain: {
    message: 'L’incertitude de « {source} » est plus grande que l’étendue qu’elle peut avoir.',
    remedy: 'Indiquez « {source} » avec une incertitude plus petite.',
  },
  fitAtBound: {
    message:
      'L’intervalle de « {source} » dépasse ce qu’elle peut être : ne le prenez que comme borne d’un côté.',
    remedy: 'Mesurez « {source} », ou gardez la valeur indiquée.',
  },
  tooFewForFit: {
    message:
      '{values} vitesses et avances ne déterminent {inputs, plural, =0 {aucune donnée} one {pas # donnée} other {pas # données}}.',
    remedy: 'Libérez au moins une donnée, et moins qu’il n’y a de valeurs mesurées.',
  },
};
