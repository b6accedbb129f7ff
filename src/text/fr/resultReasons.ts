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
};
