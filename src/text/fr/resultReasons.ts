import type { Catalogue } from '../catalogue';

/** What a result may lack, and why a frame does not count. */
export const resultReasons: Catalogue['reasons'] = {
  beforeExit: {
    message: 'Le centre est encore derrière le plan de bouche, où la bille est poussée.',
  },
  rejectedByHand: {
    message: 'Retiré à la main.',
  },
  glimpsed: {
    message:
      'Longtemps avant ou après les autres images, quelque chose de rond apparaît un instant : un morceau, pas la bille.',
  },
  nothingInMuzzleZone: {
    message:
      'Aucune image ne montre la bille à moins de trois diamètres de la bouche ; ce qu’elle y a perdu est supposé, non vu ; l’incertitude en tient compte.',
    remedy: 'Déplacez le champ pour qu’il commence à la bouche.',
  },
  nothingBeyondMuzzleZone: {
    message:
      'Aucune image ne montre la bille à plus de trois diamètres de la bouche ; la traînée et la perte à la bouche ne peuvent donc être séparées.',
    remedy: 'Élargissez le champ le long du vol.',
  },
  exposureUnknown: {
    message: 'Le temps de pose n’est pas indiqué.',
    remedy: 'Saisissez le temps de pose réglé sur la caméra.',
  },
  monteCarloDisagrees: {
    message:
      'L’intervalle du bilan et celui de Monte-Carlo de la vitesse de sortie diffèrent nettement ; celui de Monte-Carlo est indiqué.',
    remedy:
      'Regardez les plus grandes contributions du bilan : l’une est si mal connue que son effet ne lui est pas proportionnel.',
  },
  soundUndecodable: {
    message: 'La piste son n’a pas pu être décodée.',
    remedy: 'Continuez sans le son, ou convertissez-le en AAC ou PCM.',
  },
  noSoundTrack: {
    message: 'Le son est indiqué, mais l’enregistrement n’a pas de piste son.',
    remedy: 'Utilisez le clip d’origine avec son son, ou laissez le son hors du tir.',
  },
  dragNegative: {
    message:
      'Dans l’ajustement, la bille accélère après la sortie ; elle ne révèle donc aucune traînée.',
    remedy:
      'Vérifiez l’échelle, l’objectif et la base de temps, ou écartez les images proches du bord du champ.',
  },
  movesBackwards: {
    message: 'Le long de la ligne de vol, la bille ne s’éloigne pas de la bouche.',
    remedy: 'Inversez la direction du vol, ou vérifiez ce qui a été suivi.',
  },
  sensitivityUnknown: {
    message: 'L’ajustement échoue dès qu’une de ses données est décalée de son incertitude.',
    remedy:
      'Regardez les incertitudes de l’échelle, de la base de temps et du plan de bouche, ou utilisez plus d’images.',
  },
  parameterWithoutEffect: {
    message:
      'L’un des paramètres ne change pas la courbe ajustée ; aucune incertitude ne peut donc lui être attribuée.',
    remedy: 'Utilisez un modèle à moins de paramètres, ou plus d’images.',
  },
  parametersNotSeparable: {
    message:
      'Les données ne permettent pas de séparer deux des paramètres ; aucune incertitude ne peut donc leur être attribuée.',
    remedy: 'Utilisez un modèle à moins de paramètres, ou plus d’images.',
  },
  pastTarget: {
    message: 'La bille a touché la cible, ce qui change son mouvement.',
  },
  notLeavingTarget: {
    message: 'Les centres au-delà de la cible ne s’en éloignent pas.',
    remedy: 'Vérifiez la distance de la cible et ce qui a été suivi.',
  },
  noUncertainty: {
    message: 'Ni le film ni le modèle n’ont d’incertitude à laquelle rapporter leur différence.',
    remedy: 'Indiquez avec quelle exactitude les données du lanceur sont connues.',
  },
  notMeasured: {
    message:
      'L’ajustement d’une image peut être montré une fois le film mesuré dans cette fenêtre.',
    remedy: 'Mesurez-le, ou mesurez-le de nouveau.',
  },
  pixelsNeeded: {
    message: 'Ce changement demande de mesurer le film une nouvelle fois.',
    remedy: 'Mesurez de nouveau.',
  },
  pictureNotDrawn: {
    message: 'Le navigateur n’a pas pu convertir la figure en image.',
    remedy: 'Enregistrez-la plutôt en SVG.',
  },
};
