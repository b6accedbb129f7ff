import type { Catalogue } from '../catalogue';

/** What is wrong with scale, plane, lens, camera and clock. */
export const calibrationReasons: Catalogue['reasons'] = {
  axisOpposed: {
    message:
      'La direction du vol indiquée ne s’accorde pas avec la trajectoire ; c’est la trajectoire qui est utilisée.',
    remedy: 'Tournez la flèche de direction sur l’image dans le sens du vol.',
  },
  axisUndetermined: {
    message: 'La trajectoire est trop courte pour donner une direction.',
    remedy: 'Filmez un trajet plus long.',
  },
  lineUndetermined: {
    message: 'Les points ne déterminent pas de droite.',
  },
  bandsStandStill: {
    message:
      'Chaque image saisit la lampe au même moment de son scintillement ; ses bandes ne se distinguent donc pas des clairs et des ombres de la scène elle-même.',
    remedy: 'Filmez la lampe à une cadence qui ne divise pas son scintillement, ou plus longtemps.',
  },
  directionOpen: {
    message:
      'D’après ces images, les lignes pourraient être lues dans un sens comme dans l’autre : la lampe scintille un nombre entier de fois en deux images.',
    remedy: 'Indiquez le sens de lecture, ou filmez la lampe à une autre cadence.',
  },
  noFlicker: {
    message: 'Aucun scintillement régulier n’a été trouvé près de la fréquence attendue.',
    remedy:
      'Éclairez la scène avec la seule lampe, et vérifiez la fréquence du secteur et la cadence du clip.',
  },
  timerElapsed: {
    message: 'Le temps écoulé sur le chronomètre filmé doit être supérieur à zéro.',
    remedy: 'Saisissez la différence des deux lectures.',
  },
  timerFrames: {
    message: 'La seconde image doit venir après la première.',
    remedy: 'Choisissez une image plus tardive pour la seconde lecture.',
  },
  boardsAlike: {
    message:
      'Les vues du damier se ressemblent trop pour révéler la distance focale de l’objectif.',
    remedy: 'Inclinez le damier dans différentes directions, de 20 à 40 degrés.',
  },
  edgeOutside: {
    message: 'Une extrémité du bord se trouve hors de l’image.',
    remedy: 'Placez les deux extrémités dans l’image.',
  },
  noEdge: {
    message: 'Aucun bord ne se détache entre les deux extrémités marquées.',
    remedy: 'Marquez un bord au saut de luminosité net, comme le contour du tube ou une règle.',
  },
  pixelsOblong: {
    message:
      'Les pixels du film ne sont pas carrés, ce que suppose la détermination de l’objectif à partir d’images.',
    remedy: 'Saisissez les valeurs de l’objectif, ou marquez plutôt un plan.',
  },
  parallaxUnknown: {
    message:
      'Ni la distance de la caméra ni la distance focale ne sont indiquées ; l’effet sur l’échelle de ce qui est devant ou derrière la ligne de vol n’est donc pas compté.',
    remedy: 'Mesurez la distance de l’objectif à la ligne de vol et saisissez-la.',
  },
  planeCorners: {
    message:
      'Les quatre coins du plan ne sont pas ceux d’un rectangle dans l’ordre haut gauche, haut droite, bas droite, bas gauche.',
    remedy: 'Marquez de nouveau les coins dans cet ordre, chacun à sa place.',
  },
  regionOutside: {
    message: 'La zone de vol se trouve hors de l’image.',
    remedy: 'Tracez-la de nouveau sur le vol, ou retirez-la.',
  },
  sceneDiffers: {
    message: 'La scène immobile ne ressemble pas à la précédente.',
  },
  sceneTooPlain: {
    message: 'La scène immobile a trop peu de détails pour révéler sa position.',
  },
  nonSquarePixels: {
    message:
      'Les pixels du film sont {aspect} fois plus larges que hauts ; dans une image aussi déformée, le disque de la bille n’est pas cherché.',
    remedy: 'Exportez le clip avec des pixels carrés.',
  },
  muzzleOutside: {
    message:
      'Le point de bouche ({x}, {y}) se trouve hors de l’image de {width} x {height} pixels.',
    remedy: 'Marquez la bouche dans l’image.',
  },
  pointOutsideFilm: {
    message:
      'Une place de la bille est indiquée dans l’image {frame}, mais le film se termine à l’image {last}.',
    remedy:
      'Retirez ce point, ou vérifiez que c’est bien l’enregistrement sur lequel il a été placé.',
  },
  ballTooSmall: {
    message: 'À cette échelle, la bille mesure {across} pixels ; il en faut au moins {least}.',
    remedy: 'Vérifiez la longueur connue et le diamètre de la bille, ou filmez de plus près.',
  },
  ballTooLarge: {
    message: 'À cette échelle, la bille mesure {across} pixels, plus que l’image.',
    remedy: 'Vérifiez la longueur connue et le diamètre de la bille.',
  },
  axisDisagrees: {
    message:
      'La direction du vol indiquée s’écarte de {degrees} degrés de la trajectoire ; les distances en sont corrigées.',
    remedy: 'Laissez la direction se déduire de la trajectoire, ou tracez-la le long du vol.',
  },
  ratesDisagree: {
    message:
      '{form, select, typed {La cadence saisie est de {rate} images/s, le fichier indique {file}.} other {L’horodatage du fichier donne {file} images/s, la cadence de prise de vue indiquée est {rate}.}}',
    remedy:
      '{form, select, typed {Vérifiez avec un chronomètre ou une lampe filmés laquelle des deux la caméra avait vraiment.} other {Si le clip a été ralenti à l’enregistrement, utilisez plutôt la cadence de prise de vue comme base de temps.}}',
  },
  lampTooFast: {
    message:
      'À la cadence attendue, la lampe scintille {times} fois par image ; il faut plus de 2 images par scintillement.',
    remedy: 'Utilisez un chronomètre filmé.',
  },
  lampTooShort: {
    message: 'Le clip montre {flickers} scintillements de la lampe ; il en faut au moins {fewest}.',
    remedy: 'Filmez la lampe plus longtemps.',
  },
  distancesDisagree: {
    message:
      'D’après la distance focale de l’objectif, la ligne de vol est à {told} m, mais {stated} m sont indiqués ; la distance focale est utilisée.',
    remedy:
      'Mesurez de l’objectif à la ligne de vol, et vérifiez que le zoom et la mise au point sont ceux de l’étalonnage de l’objectif.',
  },
  notARectangle: {
    message:
      'Les quatre coins s’écartent de {off} px de ceux d’un rectangle de {width} m sur {height} m, alors que {cornerU} px sont indiqués pour chacun.',
    remedy:
      'Vérifiez chaque coin, que largeur et hauteur ne soient pas inversées, et l’étalonnage de l’objectif.',
  },
  edgeTellsLittle: {
    message:
      '{form, select, known {D’après les bords, la distorsion dans les coins de l’image n’est connue qu’à {u} px.} other {Les bords ne révèlent pas la distorsion dans les coins de l’image.}}',
    remedy: 'Marquez des bords plus longs et plus loin du milieu, plusieurs, ou filmez un damier.',
  },
  edgeTooShort: {
    message:
      '{form, select, points {Un bord a besoin d’au moins {fewest} points pour que sa courbure se voie.} other {Le bord est marqué sur {length} px ; sa courbure se voit à partir de {shortest} px, mieux sur toute l’image.}}',
    remedy: 'Écartez davantage ses deux extrémités.',
  },
  edgeThroughCentre: {
    message:
      'Le bord passe à {distance} px du milieu de l’image, où un objectif laisse droites les lignes droites.',
    remedy: 'Prenez un bord proche du haut ou du bas de l’image, ou filmez-en un là.',
  },
  tooFewBoards: {
    message:
      'Le damier {boards, plural, =0 {n’a été trouvé dans aucune image} one {a été trouvé dans # image} other {a été trouvé dans # images}} ; il en faut au moins {fewest} pour un objectif.',
    remedy:
      'Filmez le damier de plusieurs côtés, incliné de 20 à 40 degrés et jusque dans les coins de l’image.',
  },
  boardsDoNotFit: {
    message: 'Les coins s’écartent en moyenne de {off} px d’un objectif à deux termes radiaux.',
    remedy:
      'Utilisez un damier plan, gardez la mise au point et le zoom, et retirez les images floues.',
  },
  noBoard: {
    message: 'Aucun damier ne se détache dans l’image {frame}.',
    remedy:
      'Montrez le damier entier, éclairé uniformément et net, avec des cases d’au moins 10 pixels de large.',
  },
  lengthTooUncertain: {
    message:
      'La longueur connue {number} est indiquée avec une incertitude aussi grande qu’elle-même.',
    remedy:
      'Vérifiez les incertitudes de la longueur, de ses extrémités, de sa profondeur et de la distance de la caméra.',
  },
  zeroLength: {
    message: 'Les deux extrémités de la longueur connue {number} sont sur le même pixel.',
    remedy: 'Écartez-les, chacune sur son repère.',
  },
  outsideLens: {
    message:
      '{form, select, nothing {Tel qu’il est indiqué, l’objectif ne montre rien de ce qui se trouve à {distance} px de son centre.} other {Le point ({x}, {y}) est à {distance} px du centre de l’objectif, où la distorsion indiquée replie l’image sur elle-même.}}',
    remedy:
      '{form, select, nothing {Étalonnez l’objectif avec des vues qui vont jusque dans les coins.} other {Étalonnez l’objectif avec des vues qui vont jusque dans les coins, ou gardez repères et vol plus près du milieu.}}',
  },
  beyondHorizon: {
    message: 'Le point ({x}, {y}) est à l’horizon du plan marqué ou au-delà.',
    remedy: 'Vérifiez les quatre coins du plan et leur ordre.',
  },
  planeDistance: {
    message: 'Aucun objectif ne montre le plan tel qu’il est marqué depuis {distance} m.',
    remedy: 'Vérifiez la distance de la caméra, la largeur et la hauteur du plan, et ses coins.',
  },
  picturesOtherSize: {
    message:
      'Les images ont {width} sur {height} pixels, le film {filmWidth} sur {filmHeight} : ce qu’elles disent de l’objectif ne vaut pas pour lui.',
    remedy:
      'Prenez les images avec la caméra réglée comme pour le tir : même taille, même zoom, même mise au point.',
  },
  noTimeStamps: {
    message: '« {name} » ne contient pas d’horodatage.',
    remedy: 'Indiquez la cadence à laquelle il a été filmé.',
  },
  cameraMoved: {
    message:
      '{form, select, moved {La scène immobile se trouve à {distance} px de sa place dans le tir {shot} du même montage ({across} en travers, {down} vers le bas) : la caméra a bougé.} other {La caméra ou la scène ne sont pas comme dans le tir {shot} du même montage. {because}}}',
    remedy:
      'Fixez de nouveau l’échelle et la bouche sur ce film, ou vérifiez qu’il appartient à ce montage.',
  },
  sceneSizeDiffers: {
    message:
      'Les images ont {width} x {height} px, les précédentes avaient {widthBefore} x {heightBefore} px.',
  },
  sizeChanges: {
    message: 'Les images n’ont pas toutes la taille de la première, {width} x {height} px.',
    remedy: 'Coupez le clip là où la taille change et utilisez une partie.',
  },
  viewTooUncertain: {
    message:
      'Si la donnée « {source} » est décalée de son incertitude, le centre de l’image {frame} n’a plus de place dans le plan de vol.',
    remedy:
      'Étalonnez l’objectif ou marquez le plan plus précisément, ou rejetez les images proches du bord du champ.',
  },
};
