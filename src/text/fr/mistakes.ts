import type { English, SameShape } from '../catalogue';

export const mistakes: SameShape<English['mistakes']> = {
  title: 'Erreurs fréquentes, et leur taille',
  what: 'Un tir de Launcher B, calculé par le moteur de rendu de ce projet : aucun tir réel. Chaque erreur a été faite exprès et le film dépouillé deux fois par cet outil, une fois bien, une fois mal. Sa taille est ce qui en est sorti ; à côté se trouve ce qu’attend une formule. Les valeurs sont données avec deux fois leur incertitude-type.',
  back: 'Revenir au tir',
  right: 'Juste',
  wrong: 'Faux',
  size: 'Taille de l’erreur',
  found: 'trouvée : {size}',
  expected: 'selon la formule : {size}',
  avoid: 'Comment l’éviter.',
  rendered: 'image de synthèse',
  formula: 'Formule',
  truth: 'Vrai',
  framesUsed: '{frames, plural, one {# image utilisée} other {# images utilisées}}',
  withSpeed: 'vitesse {speed}',
  warned: 'Avec l’erreur, cet outil a averti :',
  notWarned: 'Avec l’erreur, cet outil n’a donné aucun avertissement.',
  blurLimit:
    'La formule ne compte que le bruit des pixels, le moins qu’il puisse y avoir. Ce qui est déclaré croît davantage : un bord étalé en dit aussi moins sur l’éclairage de la bille et sur la longueur de sa traînée.',
  source: 'Formule établie ici ; pas d’autre source.',
  lines: { muzzle: 'plan de bouche', mark: 'repère pris pour lui' },
  header: 'Erreurs',
  quantity: {
    speed: 'Vitesse de sortie',
    exitTime: 'Instant de sortie',
    centreU: 'Incertitude d’un centre',
  },
  list: 'Sur cette page',
  wrongRate: {
    title: 'Mauvaise cadence d’enregistrement',
    what: 'Le film a été pris à {rate}, mais on a saisi {typed} : un réglage d’un autre jour. Les images sont les mêmes ; seul le temps entre elles est faux. Avec la cadence de lecture du fichier, souvent 30 images/s, la vitesse serait des centaines de fois trop petite.',
    avoid:
      'Notez la cadence avec chaque tir. Filmez de temps en temps une lampe qui papillote ou un chronomètre, et comparez (Temps, vérification de la cadence).',
    formula: 'cadence saisie / cadence réelle − 1',
    both: 'Une image sur trois du tir, réunies. Juste, les billes sont à 0,25 ms l’une de l’autre ; avec la mauvaise cadence, 0,30 ms.',
  },
  lostFrames: {
    title: 'Images perdues',
    what: 'Une image après l’image {after} n’a pas été enregistrée. La bille saute : elle fait deux pas dans ce qui compte pour un.',
    avoid:
      'Cherchez une marche dans l’image de défilement et indiquez ce qui manque (Temps, images perdues). Lisez le compteur de la caméra, et copiez des fichiers, non des écrans.',
    formula:
      '6 · n₁ · n₂ · k / (N · (N² − 1)), k images perdues entre les n₁ premiers et les n₂ derniers de N centres',
    right: 'Une image sur trois du film entier.',
    wrong: 'Le même film avec une image perdue : un écart est plus large.',
  },
  wrongPlane: {
    title: 'Échelle dans un autre plan',
    what: 'La règle est {depth} derrière le vol, vue de {distance}, et on la prend comme si elle était dans son plan. Elle paraît plus petite : un pixel semble donc valoir plus de mètres qu’il n’en vaut.',
    avoid:
      'Mettez la règle là où vole la bille. Si c’est impossible, mesurez sa profondeur et la distance de la caméra et indiquez les deux ; reculez la caméra et zoomez.',
    formula: 'profondeur / distance de la caméra',
    right: 'La règle dans le plan du vol.',
    wrong: 'La même règle derrière.',
  },
  parallax: {
    title: 'Parallaxe',
    what: 'Un repère {depth} derrière le vol, à la hauteur de la bouche, est pris pour le plan de bouche. La caméra, à {distance}, le voit de biais, donc plus près du milieu de l’image. La vitesse reste la même ; l’instant de sortie, et l’avance avec lui, non.',
    avoid:
      'Marquez la bouche sur l’extrémité du tube elle-même, à hauteur de l’âme. Placez la caméra droit devant la bouche si c’est l’instant de sortie qui compte.',
    formula: 'écart latéral × profondeur / (distance de la caméra + profondeur) / vitesse',
    right: 'Le repère dans le plan du vol est sous la bouche.',
    wrong: 'Le même repère derrière se voit ailleurs.',
  },
  rollingShutter: {
    title: 'Obturateur déroulant',
    what: 'Un téléphone lit son image ligne après ligne, {lineTime} chacune, ici contre le vol. Traitée comme si toutes étaient lues d’un coup, la vitesse est fausse : d’une image à l’autre, la bille est passée sur des lignes lues plus tôt.',
    avoid:
      'Mesurez le temps par ligne avec une lampe qui papillote et indiquez-le (Temps, obturateur déroulant), ou tournez le téléphone pour qu’il lise en travers du vol.',
    formula:
      '1 / (1 + vitesse × temps par ligne / échelle) − 1 ; dans le sens du vol, − au lieu de +',
    right: 'Toutes les lignes à la fois : une image sur trois.',
    wrong: 'Ligne après ligne, aux mêmes instants : les billes sont plus serrées.',
  },
  blur: {
    title: 'Flou de bougé',
    what: 'La pose est de {long} au lieu de {short} : plus de lumière, mais la bille s’allonge dans le vol. Son milieu reste où il était, la vitesse n’est donc pas décalée ; mais chaque centre est moins bien connu.',
    avoid:
      'Que la bille n’avance pas de plus d’un dixième de son diamètre pendant la pose, et prenez la lumière de lampes.',
    formula: 'racine du carré de la pente d’un bord net sur celui d’un bord étalé',
    right: 'Pose courte.',
    wrong: 'Pose longue.',
  },
};
