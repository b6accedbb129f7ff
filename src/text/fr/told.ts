import type { English, SameShape } from '../catalogue';

export const statement: SameShape<English['report']['statement']> = {
  detail:
    'Vitesse du centre de la bille le long du vol lorsqu’il franchit le plan de bouche ; intervalle {interval}, incertitude-type {u}{known, select, yes {, {dof} degrés de liberté effectifs} other {}}.',
  lead: 'La membrane s’est ouverte <strong>{lead}</strong> {order, select, before {avant} other {après}} la sortie du centre de la bille.',
  sealOpenedAt: 'Ouverture de la membrane',
  centreLeftAt: 'Sortie du centre',
  leadingPoint: 'Point avant à la membrane',
  fromOpening: '{time} {order, select, after {après} other {avant}} l’ouverture de la membrane',
  notFound: 'non trouvé',
  noVelocity: 'Aucune vitesse de sortie ne peut être indiquée : {reason}',
  noLead: 'L’avance de l’ouverture de la membrane sur la bille ne peut être indiquée : {reason}',
  warnings:
    'La mesure s’accompagne {count, plural, one {d’un avertissement, à citer} other {de # avertissements, à citer}} avec elle.',
  quoted:
    'Le centre de la bille a quitté la bouche à {value}, avec une incertitude-type de {u} ; l’intervalle de {low} à {high} contient la vitesse vraie avec une probabilité de {coverage}{known, select, yes { ({dof} degrés de liberté effectifs)} other {}}.',
  quotedLead:
    'La membrane de bouche s’est ouverte {lead} {order, select, before {avant} other {après}} la sortie du centre de la bille, avec une incertitude-type de {u}{open, select, yes { ; dans son intervalle à {coverage}, elle a pu s’ouvrir avant ou après.} other { (intervalle à {coverage} : de {low} à {high}).}}',
  found:
    'Obtenu à partir du centre de la bille dans {used} images d’un film à grande vitesse ; incertitudes selon le JCGM 100{checked, select, yes {, vérifiées par Monte-Carlo (JCGM 101)} other {}}.',
};

export const findings: SameShape<English['report']['findings']> = {
  reading: '<strong>{value}</strong> ({coverage})',
  flight: 'Direction, énergie, accélération',
  elevation: 'Direction à la sortie',
  elevationIs:
    '<strong>{value}</strong> ({coverage}){way, select, level { : parallèle aux lignes de l’image, dans les limites connues} up { : vers le haut par rapport aux lignes de l’image} other { : vers le bas}}',
  kineticEnergy: 'Énergie cinétique à la sortie',
  momentum: 'Quantité de mouvement à la sortie',
  boreAcceleration: 'Accélération moyenne dans le tube',
  boreAccelerationIs:
    '<strong>{value}</strong> ({coverage}) sur les trois derniers diamètres de bille du tube',
  deceleration: 'Décélération après la sortie',
  dragCoefficient: 'Coefficient de traînée impliqué',
  target: 'À la cible',
  targetTime: 'Arrivée à la cible',
  targetSpeed: 'Vitesse à la cible',
  targetSpeedAfter: 'Vitesse après la cible',
  targetEnergy: 'Énergie cédée à la cible',
  streak: 'Vitesse par le seul flou',
  streakIs:
    'Le flou de bougé seul donne <strong>{speed}</strong> ({coverage}, {frames, plural, one {# image} other {# images}}). {agrees, select, yes {Il concorde avec l’ajustement : {apart} {slower, select, yes {plus lent} other {plus rapide}} sur les mêmes images.} other {<alarm>Il ne concorde pas avec l’ajustement : {apart} {slower, select, yes {plus lent} other {plus rapide}} sur les mêmes images. Vérifiez le temps de pose et la cadence d’enregistrement.</alarm>}}',
  spin: 'Rotation',
  spinIs:
    '<strong>{rate}</strong> ({coverage}) : {turns} tours par seconde, dans le sens {way, select, clockwise {horaire} other {antihoraire}} à l’image.',
  shake: 'Tremblement',
  noDetail:
    'La scène fixe contient trop peu de détails pour dire si la caméra ou le lanceur a bougé.',
  still: 'La scène est restée fixe à {within} px près.',
  moved:
    'La scène a bougé de {rms} px (moyenne quadratique), au plus de {most} px, chacun connu à {u} px ; cela a été retranché des positions.',
  rivals: 'Pas la bille',
  rival: 'Vu dans {frames, plural, one {# image} other {# images}} : {reason}',
  sound: 'Son',
  burstHeard: 'Rupture entendue',
  impactHeard: 'Impact sur la butée entendu',
  meanSpeed: 'Vitesse moyenne jusqu’à la butée',
  againstFilm:
    '{verdict, select, no {<alarm>Cela ne concorde pas avec le film : entendu {apart} {early, select, yes {avant} other {après}} la rupture vue sur le film ({coverage}). Vérifiez le décalage entre son et image et la distance du microphone.</alarm>} yes {Cela concorde avec le film : entendu {apart} {early, select, yes {avant} other {après}} la rupture vue sur le film ({coverage}).} other {Entendu {apart} {early, select, yes {avant} other {après}} la rupture vue sur le film ({coverage}).}}',
  drive:
    'À titre de comparaison : dans un vide parfait, l’air extérieur pousserait avec environ {force} N : {acceleration} m/s² au début, {gravities} g. La colonne d’air derrière la bille doit elle aussi être accélérée.',
};

export const fit: SameShape<English['report']['fit']> = {
  chiSquare: 'Khi-deux {chiSquare} pour {dof} degrés de liberté.',
  downWeighted:
    '{count, plural, one {# centre est si éloigné qu’il compte} other {# centres sont si éloignés qu’ils comptent}} pour moins de la moitié.',
  monteCarlo:
    'Monte-Carlo, {trials} tirages : {value}, intervalle {interval} ; {agrees, select, yes {concorde avec le bilan.} other {ne concorde pas avec le bilan, d’où l’intervalle indiqué.}}',
};
