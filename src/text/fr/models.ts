import type { English, SameShape } from '../catalogue';

export const models: SameShape<English['models']> = {
  title: 'Modèles',
  caution:
    'Les prédictions ne servent qu’à l’étude : elles n’autorisent ni à déclarer un lanceur sûr, ni à le modifier. Les règles locales et la personne qualifiée qui encadre le tir priment.',
  ballAndAir: 'La bille et l’air s’indiquent à l’étape Bille ; ils entrent aussi dans les modèles.',
  model: 'Modèle',
  cards: {
    title: 'Ce que les modèles supposent',
    source: 'Source : {source}',
    constantForce: {
      title: 'Force constante',
      assumes:
        'La pression extérieure pousse la bille, si vite qu’elle aille, dans un vide parfait. Aucun air n’est mis en mouvement, rien ne fuit, rien ne frotte et il n’y a rien devant, pas même hors de la bouche. La pression résiduelle, la pression de rupture et les pertes ne sont pas utilisées ; la membrane s’ouvre quand la bille la touche. Le modèle est toujours au-dessus de ce que fait un lanceur.',
      source:
        'Mécanique de manuel ; donné comme borne naïve par Ayars et Buchholtz, Am. J. Phys. 72 (2004) 961, éq. 1 et 2.',
    },
    momentum: {
      title: 'Quantité de mouvement de la bille et de l’air',
      assumes:
        'L’air qui suit la bille est porté d’emblée à sa vitesse, à la masse volumique extérieure : il ne se détend pas et n’a pas d’ondes. Ajoutés par des termes propres : air uniforme devant, comprimé sans perte de chaleur, fuite, perte à l’entrée, frottements. Son plafond, la racine de la pression sur la masse volumique, est propre au modèle et ne borne rien.',
      source: 'Ayars et Buchholtz, Am. J. Phys. 72 (2004) 961, avec en plus les termes nommés ici.',
    },
    gasDynamics: {
      title: 'Dynamique des gaz',
      assumes:
        'Les équations d’Euler à une dimension derrière et devant la bille, qui est un piston au jeu non étanche : ondes et chocs sont suivis. Un gaz parfait, uniforme sur la section ; la membrane arrière disparaît d’un coup ; la membrane de bouche est une paroi jusqu’au dépassement de sa pression de rupture, puis s’ouvre d’un coup ; des parois qui ne prennent pas de chaleur ; la bille ne perd rien aux restes de la membrane.',
      source:
        'Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3ᵉ éd., 2009 (méthode) ; Seigel, AGARDograph 91 (1965) (le problème ; de mémoire).',
    },
    expansion: {
      title: 'Limite de détente',
      assumes:
        'À la bille, de l’air détendu sans perte jusqu’à la vitesse de celle-ci, sans que les ondes aient le temps de courir : ce vers quoi tend la dynamique des gaz pour une bille lourde, et au-dessus d’elle pour une légère. Air devant et fuite comme dans le modèle de la quantité de mouvement ; la perte à l’entrée et le frottement de la paroi ne sont pas utilisés.',
      source:
        'Seigel, The Theory of High Speed Guns, AGARDograph 91 (1965), grande chambre (de mémoire ; algèbre vérifiée).',
    },
  },
  run: {
    stale:
      'Le lanceur, le film ou la probabilité de couverture ont changé depuis le calcul des modèles. Prédisez de nouveau.',
    cancelled: 'Interrompu : tous les modèles ne sont pas terminés.',
    running: 'Calcul des modèles',
    predict: 'Prédire',
    again: 'Prédire de nouveau',
  },
  launcher: {
    title: 'Lanceur',
    none: 'Aucun lanceur n’est encore indiqué. L’alésage et la longueur du tube viennent en premier.',
    losses: 'Départ, fuite et pertes',
    lossesWhat: 'Valeurs courantes, à défaut de mieux ; chacune avec sa propre incertitude.',
    needed: 'nécessaire',
    closeToSeal: 'près de la membrane',
    boreDiameter: 'Diamètre de l’alésage',
    barrelLength: 'Longueur du tube, de membrane à membrane',
    residualPressure: 'Pression résiduelle',
    sealBurstPressure: 'Pression de rupture de la membrane',
    startPosition: 'Position initiale du centre de la bille',
    gapDischarge: 'Débit du jeu',
    entranceLoss: 'Perte à l’entrée',
    wallFriction: 'Frottement de la paroi',
    ballFriction: 'Frottement de la bille, N',
    hint: {
      residualPressure: 'Pression absolue de l’air resté dans le tube.',
      sealBurstPressure:
        'De combien la pression intérieure dépasse la pression extérieure quand la membrane de bouche s’ouvre.',
      startPosition:
        'À partir de la membrane arrière. Si le champ est vide : la bille est à 1 ± 0,5 mm d’elle.',
      gapDischarge: 'Coefficient de la fuite autour de la bille ; 0 : pas de fuite.',
      entranceLoss: 'Environ 0,5 avec une arête vive, proche de 0 avec une entrée évasée.',
      wallFriction: 'Coefficient de Darcy : environ 0,02 dans un tube lisse.',
    },
  },
  view: {
    title: 'Film et modèle comparés',
    stale:
      'Le lanceur ou le film ont changé : prédisez de nouveau. Ci-dessous, ce que disaient les modèles avant.',
    what: 'Quatre modèles disent à quelle vitesse ce lanceur devrait tirer et quand sa membrane de bouche devrait s’ouvrir, chacun avec l’incertitude que lui donnent les données, à côté de ce que le film a mesuré.',
    stateLauncher:
      'Indiquez le lanceur dans le volet de données : alésage, longueur et ses deux pressions.',
  },
  comparison: {
    meaning: {
      agree:
        'Film et modèle concordent : leur écart ne dépasse pas ce qu’expliquent leurs incertitudes.',
      questionable:
        'Film et modèle discordent peut-être : ils sont distants de {zeta} incertitudes-types, ce que le hasard explique au plus une fois sur vingt tirs.',
      differ:
        'Film et modèle discordent : ils sont distants de {zeta} incertitudes-types. Une donnée, le film ou ce que le modèle omet est en cause.',
    },
    noSpeed:
      'Le film ne donne pas encore de vitesse de sortie ; rien n’est donc comparé aux modèles.',
    speed: 'Vitesse de sortie',
    lead: 'Avance de la membrane de bouche',
    caption: '{title} ({coverage})',
    from: 'Origine',
    difference: 'Film moins modèle',
    filmAndModel: 'Film et modèle',
    film: 'Film',
    notMeasured: 'non mesuré',
    waiting: 'calcul en cours',
    verdict: {
      agree: 'concordent',
      questionable: 'écart possible',
      differ: 'diffèrent',
    },
    what: 'ζ est l’écart divisé par son incertitude-type : jusqu’à 2 ils concordent, à partir de 3 ils diffèrent. Eₙ est l’écart divisé par son incertitude élargie à 95 % : au-delà de 1 ils diffèrent. L’incertitude d’un modèle est celle de ses données ; ce qu’il omet n’y figure pas. Film et modèle sont tenus pour indépendants.',
    en: 'Eₙ',
    ofModel: '{model} : {message}',
  },
  plots: {
    title: 'Vitesse de sortie et longueur du tube',
    axis: 'longueur du tube',
    thisShot: 'ce tir',
  },
  residual: {
    title: 'Ce que coûte l’air résiduel',
    name: 'Vitesse de sortie et pression résiduelle',
    caption:
      'Vitesse de sortie à d’autres pressions résiduelles, tout le reste comme indiqué ({coverage})',
    share: 'Part de l’air extérieur',
    pressure: 'Pression résiduelle',
    doesNotLeave: 'ne sort pas',
    pressureIs: '{number} hPa',
  },
  gap: {
    title: 'Ce qui devrait être faux',
    byModel: 'Selon le modèle',
    waiting: 'Calcul en cours ; les vitesses viennent d’abord.',
    noSpeed: 'Mesurez d’abord le film : il n’y a pas de vitesse à laquelle comparer le modèle.',
    doesNotLeave: 'Selon ce modèle la bille ne sort pas ; aucun écart ne peut donc être comblé.',
    caption: 'Une donnée à la fois, les autres comme indiqué ; la moins invraisemblable d’abord',
    input: 'Donnée',
    needed: 'Devrait être',
    off: 'Écart',
    inU: 'En incertitudes propres',
    exact: 'indiquée comme exacte',
  },
};
