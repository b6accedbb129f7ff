import type { Catalogue } from '../catalogue';

/** What is wrong with scale, plane, lens, camera and clock. */
export const calibrationReasons: Catalogue['reasons'] = {
  axisOpposed: {
    message:
      'La direction du vol indiquée ne s’accorde pas avec la trajectoire ; c’est la trajectoire qui est utilisée.',
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
      'Chaque image saisit la lampe au même moment de son scintillement ; ses bandes ne se distinguent donc pas des clairs et des ombres de la scène elle-même.',
    remedy: 'Filmez la lampe à une cadence qui ne divise pas son scintillement, ou plus longtemps.',
  },
  directionOpen: {
    message:
      'D’après ces images, les lignes pourraient être lues dans un sens comme dans l’autre : la lampe scintille un nombre entier de fois en deux images.',
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
      'Ni la distance de la caméra ni la distance focale ne sont indiquées ; l’effet sur l’échelle de ce qui est devant ou derrière la ligne de vol n’est donc pas compté.',
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
};
