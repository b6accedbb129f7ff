import type { Catalogue } from '../catalogue';

/** What was looked at in the fit. */
export const checks: Catalogue['reasons'] = {
  chiSquare: {
    message:
      '{form, select, none {Aucune image ne reste pour vérifier la dispersion.} more {Les centres se dispersent {ratio} fois autant que le permet leur incertitude indiquée.} less {Les centres ne se dispersent que de {ratio} fois leur incertitude indiquée : elle est trop grande.} other {Les centres se dispersent autour de la courbe comme leur incertitude le laisse attendre ({ratio} fois).}}',
    remedy:
      'Cherchez un motif dans les résidus, rejetez les images au contour perturbé, ou vérifiez le temps.',
  },
  runs: {
    message:
      '{form, select, tooFew {Trop peu d’images pour chercher un motif dans les résidus.} chance {Les résidus changent de signe aussi souvent que le veut le hasard.} long {Les résidus gardent leur signe sur de longues portions : la courbe ne suit pas le trajet.} other {Les résidus alternent de signe plus que ne le veut le hasard : les images voisines ne sont pas indépendantes.}}',
    remedy:
      '{form, select, long {Choisissez le modèle automatique, vérifiez l’objectif, ou ajustez une portion plus courte.} other {Vérifiez si l’enregistrement est entrelacé ou contient des images faites à partir de leurs voisines.}}',
  },
  serialCorrelation: {
    message:
      '{form, select, tooFew {Trop peu d’images pour vérifier la corrélation entre voisines.} not {Les résidus voisins ne sont pas corrélés ({by}).} other {Les résidus voisins sont corrélés ({by}) : l’incertitude de l’ajustement est alors trop petite.}}',
    remedy: 'Choisissez le modèle automatique, et regardez si quelque chose bouge avec la bille.',
  },
  leverage: {
    message:
      '{form, select, alone {L’image {frame} décide seule d’une partie de l’ajustement (levier {say}) : aucune autre ne montrerait une erreur de son centre.} other {Sans l’image {frame}, qui pèse le plus dans l’ajustement (levier {say}), la vitesse serait d’environ {speed}{form, select, within {} other { : plus loin que ne l’explique l’incertitude de son centre}}.}}',
    remedy:
      '{form, select, alone {Filmez à une cadence plus élevée, pour que plus d’images se trouvent là.} other {Regardez le centre de l’image {frame}, et rejetez-la si son contour est perturbé.}}',
  },
  trendAlongFrame: {
    message:
      '{form, select, tooFew {Trop peu d’images pour chercher une tendance le long de l’image.} none {Les résidus ne montrent pas de tendance le long de l’image.} other {Les résidus se courbent le long de l’image : l’échelle n’est pas partout la même, ou le trajet se courbe.}}',
    remedy:
      'Étalonnez l’objectif, marquez le plan du vol, ou laissez de côté les images proches du bord.',
  },
  models: {
    message:
      '{versions, plural, one {Le résultat vient d’une seule version de l’équation du mouvement.} other {Le résultat est la moyenne de # versions de l’équation du mouvement, pondérée par la qualité de chaque ajustement.}}',
  },
  muzzleLoss: {
    message:
      'Outre la traînée, la bille perd {loss} de sa vitesse près de la bouche, connu à {u} près.',
  },
  leftOut: {
    message:
      '{leftOut, plural, =0 {Les {used, plural, other {#}} centres ont tous été utilisés.} other {{used, plural, one {# centre a été utilisé} other {# centres ont été utilisés}} et # écartés ; chacun dit pourquoi.}}',
  },
  monteCarlo: {
    message:
      '{form, select, confirmed {La vérification par Monte-Carlo confirme l’intervalle de la vitesse de sortie.} other {L’intervalle de Monte-Carlo de la vitesse de sortie n’est pas tout à fait celui du bilan ; c’est lui qui est indiqué.}}',
  },
  speedsUp: {
    message:
      '{form, select, thing {Quelque chose de la bonne taille dans les images {first} à {last} accélère en vol libre, de {change}.} other {Le trajet ajusté accélère après la sortie, ce que ne fait pas une bille libre.}}',
    remedy: 'Vérifiez échelle, objectif et temps, ou laissez de côté les images proches du bord.',
  },
};
