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
      'Longtemps avant ou après les autres images, quelque chose de rond apparaît un instant : un morceau, pas la bille.',
  },
  nothingInMuzzleZone: {
    message:
      'Aucune image ne montre la bille à moins de trois diamètres de la bouche ; ce qu’elle y a perdu est supposé, non vu ; l’incertitude en tient compte.',
    remedy: 'Déplacez le champ pour qu’il commence à la bouche.',
  },
  nothingBeyondMuzzleZone: {
    message:
      'Aucune image ne montre la bille à plus de trois diamètres de la bouche ; la traînée et la perte à la bouche ne peuvent donc être séparées.',
    remedy: 'Élargissez le champ le long du vol.',
  },
  exposureUnknown: {
    message: 'Le temps de pose n’est pas indiqué.',
    remedy: 'Saisissez le temps de pose réglé sur la caméra.',
  },
  monteCarloDisagrees: {
    message:
      'L’intervalle du bilan et celui de Monte-Carlo de la vitesse de sortie diffèrent nettement ; celui de Monte-Carlo est indiqué.',
    remedy:
      'Regardez les plus grandes contributions du bilan : l’une est si mal connue que son effet ne lui est pas proportionnel.',
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
      'Dans l’ajustement, la bille accélère après la sortie ; elle ne révèle donc aucune traînée.',
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
      'L’un des paramètres ne change pas la courbe ajustée ; aucune incertitude ne peut donc lui être attribuée.',
    remedy: 'Utilisez un modèle à moins de paramètres, ou plus d’images.',
  },
  parametersNotSeparable: {
    message:
      'Les données ne permettent pas de séparer deux des paramètres ; aucune incertitude ne peut donc leur être attribuée.',
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
  boreNotSeen: {
    message:
      'Dans les {stretch} derniers diamètres de bille de l’alésage, {count, plural, =0 {aucun centre utilisable n’est connu} one {# centre utilisable est connu} other {# centres utilisables sont connus}} ; l’accélération en demande au moins {fewest}.',
    remedy:
      'Filmez à travers une extrémité transparente du tube, à une cadence plus élevée ; la vitesse de sortie n’en a pas besoin.',
  },
  boreImplausible: {
    message:
      'Les centres dans l’alésage donnent {acceleration} m/s², ce que l’air extérieur ne peut imprimer à la bille.',
    remedy:
      'Vérifiez la place du plan de bouche ; un tube transparent peut décaler ce qu’on voit à travers sa paroi.',
  },
  outlier: {
    message: 'Le centre s’écarte de la trajectoire des autres de {times} fois son incertitude.',
  },
  fewFrames: {
    message:
      '{frames, plural, one {Une seule image porte} other {Seules # images portent}} le résultat : une valeur aberrante parmi elles ne se verrait pas.',
    remedy: 'Filmez à une cadence plus élevée ou avec un champ plus large après la bouche.',
  },
  scatterLargerThanStated: {
    message:
      'Les centres se dispersent {times} fois plus que leur incertitude ne le dit ; celle-ci a été agrandie de ce facteur.',
    remedy:
      'Cherchez un motif dans les résidus, rejetez les images au contour perturbé, ou vérifiez la base de temps.',
  },
  blurTooShort: {
    message:
      'La bille ne se déplace que de {length} px pendant une pose, trop peu pour en tirer une vitesse à {most} près.',
    remedy: 'Rien n’est perdu : une pose courte donne des centres plus nets.',
  },
  tooFewBlurred: {
    message:
      'La longueur du flou {count, plural, =0 {n’est bien connue dans aucune image} one {est bien connue dans # image} other {est bien connue dans # images}} de l’ajustement ; il en faut au moins {fewest}.',
    remedy:
      'Filmez un trajet plus long de vol libre, ou laissez voir une plus grande part de la bille.',
  },
  streakDisagrees: {
    message:
      'Le flou de mouvement donne {blur} m/s, l’ajustement {fit} m/s sur les mêmes images : ils diffèrent de {apart} fois l’incertitude-type.',
    remedy:
      'Vérifiez le temps de pose : le flou en dépend, et non de la cadence. Vérifiez la cadence et les images perdues : l’ajustement en dépend, et non du temps de pose.',
  },
  tooFewFrames: {
    message:
      '{form, select, pastMuzzle {{frames, plural, =0 {Aucune image utilisable ne montre} one {Une seule image utilisable montre} other {Seules # images utilisables montrent}} la bille après le plan de bouche ; sa vitesse et son incertitude en demandent au moins {fewest}.} centres {Le centre de la bille {frames, plural, =0 {n’est connu dans aucune image} one {est connu dans # image} other {est connu dans # images}} ; une vitesse avec son incertitude en demande au moins {fewest}.} other {La scène derrière la bille demande au moins {fewest} images ; il y en a {frames}.}}',
    remedy:
      '{form, select, pastMuzzle {Filmez à une cadence plus élevée ou avec un champ plus large après la bouche, vérifiez la place du plan de bouche, ou placez à la main les centres manquants.} centres {Filmez à une cadence plus élevée ou avec un champ plus large, ou placez à la main les centres manquants.} other {Utilisez un clip avec plus d’images.}}',
  },
  modelNotDetermined: {
    message:
      '{frames, plural, one {# image ne détermine} other {# images ne déterminent}} pas le modèle choisi.',
    remedy: 'Choisissez le modèle automatique ou un modèle plus simple, ou utilisez plus d’images.',
  },
  targetNotReached: {
    message:
      'Le vol ajusté n’atteint pas la cible, à {distance} m du plan de bouche, compte tenu de son incertitude.',
    remedy: 'Vérifiez la distance de la cible, ou choisissez le modèle automatique.',
  },
  nothingAfterTarget: {
    message:
      '{frames, plural, =0 {Aucune image utilisable ne montre} one {Une seule image utilisable montre} other {Seules # images utilisables montrent}} la bille au-delà de la cible ; sa vitesse à cet endroit en demande au moins {fewest}.',
    remedy: 'Élargissez le champ au-delà de la cible, ou placez à la main les centres manquants.',
  },
  placeNotReached: {
    message: 'La trajectoire ajustée n’atteint jamais {distance} m du plan de bouche.',
    remedy: 'Demandez un endroit de la partie filmée du vol.',
  },
  implausibleModel: {
    message:
      'Le modèle « {model} » n’est pas crédible : {form, select, speedsUp {avec lui, la bille accélère après la sortie.} other {sa traînée dépasse {most} fois celle que rencontre dans l’air une bille de cette taille et de cette masse.}}',
    remedy:
      'Vérifiez l’échelle, la base de temps et la place du plan de bouche, ou utilisez plus d’images.',
  },
  dragNotSeen: {
    message:
      '{form, select, frames {{frames, plural, one {# image ne sépare} other {# images ne séparent}} pas la traînée et la perte à la bouche.} other {Le film ne donne le coefficient de traînée qu’à {u} près ; on en sait autant d’avance de toute bille.}}',
    remedy:
      'Filmez un trajet plus long, ou avec plus d’images ; la vitesse de sortie tient compte de ce qui n’est pas connu de la traînée.',
  },
  trialsWithoutResult: {
    message:
      'L’ajustement a échoué dans {lost} essais sur {trials} de la vérification de Monte-Carlo.',
    remedy:
      'Regardez les vérifications non passées de l’ajustement ; plus d’images ou un modèle plus simple aident.',
  },
  airImplausible: {
    message:
      'Un air à {temperature} K et {pressure} Pa, connus à {temperatureU} K et {pressureU} Pa, n’a pas de masse volumique avec laquelle on puisse calculer.',
    remedy:
      'Vérifiez la température (kelvins), la pression (pascals) et l’humidité (0 à 1) de l’air, et leurs incertitudes.',
  },
};
