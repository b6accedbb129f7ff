import type { English, SameShape } from '../catalogue';

export const explain: SameShape<English['explain']> = {
  title: 'Ce que cette étape détermine',
  yours: 'Vos nombres',
  notYet: 'pas encore connu : étape {step}',
  missing:
    'Là où un nombre manque encore, sa lettre reste dans la formule. Manquent encore : {list}.',
  is: '{letter}, {name}',
  mistake: 'Une erreur fréquente',
  toMistake: 'En images : {title}',
  what: {
    footage:
      'Le film est une suite d’images prises à intervalles égaux. Tout ce qui suit compte des images : laquelle montre la bille, et où. Aucune ne doit donc manquer ni être doublée, et ce doit être le fichier de la caméra elle-même, non une copie ralentie ou coupée.',
    clock:
      'La vitesse est une distance divisée par un temps, et le film n’a pas de temps à lui : c’est le nombre d’images divisé par la cadence d’enregistrement. L’erreur relative de la cadence est celle de toute vitesse.',
    scale:
      'Le film connaît des pixels, la vitesse demande des mètres. Une longueur connue, vue dans le plan du vol, donne les mètres d’un pixel. Une longueur derrière ce plan paraît plus petite ; la distance de la caméra dit de combien.',
    ball: 'Dans chaque image, le centre de la bille est mesuré à une petite fraction de pixel. Sa distance au plan de bouche, le long du vol, est ce nombre de pixels multiplié par l’échelle. Pendant la pose la bille avance, et son image s’allonge du flou de bougé.',
    seal: 'La membrane est ouverte dès que son bombement se déchire. Rapporté à l’instant où le centre de la bille franchit le plan de bouche, cela dit ce qui est venu d’abord, et de combien.',
    result:
      'Deux centres et leurs temps donnent déjà une vitesse : la moyenne entre eux. L’air freine la bille, la vitesse à la bouche est donc plus grande ; l’ajustement par tous les centres ramène au plan de bouche.',
    models:
      'Le plus que l’air pourrait donner : toute sa pression sur la bille, tout le long du tube, rien devant la bille, ni frottement ni fuite. Un film qui dit davantage contient une erreur.',
  },
  symbol: {
    frames: 'images du film',
    interval: 'temps entre deux images',
    duration: 'de la première image à la dernière',
    rate: 'cadence d’enregistrement',
    length: 'longueur connue',
    lengthPixels: 'sa longueur dans le film',
    depth: 'sa profondeur derrière le vol',
    cameraDistance: 'distance de la caméra',
    oneScale: 'échelle',
    perPixel: 'échelle',
    centrePixels: 'centre depuis le plan de bouche, dans le film',
    centre: 'la même chose en mètres',
    exposure: 'temps de pose',
    blur: 'flou le long du vol',
    exitTime: 'le centre sort',
    burstTime: 'la membrane s’ouvre',
    lead: 'avance de la membrane',
    startPlace: 'centre dans la première image utilisée',
    endPlace: 'centre dans la dernière',
    startTime: 'temps de la première',
    endTime: 'temps de la dernière',
    meanSpeed: 'vitesse moyenne entre elles',
    exitVelocity: 'vitesse de sortie',
    pressure: 'pression de l’air',
    mass: 'masse de la bille',
    barrel: 'longueur du tube',
    boreArea: 'section de l’âme',
    mostSpeed: 'le plus qui soit possible',
  },
  note: {
    footage: 'De la première image à la dernière il y a N − 1 intervalles, et non N.',
    clock: 'La cadence est connue à {share} ; de même, par cette seule cause, toute vitesse.',
    lines:
      'Cette caméra lit son image ligne après ligne, {line} chacune : la dernière ligne vient {whole} après la première.',
    plane: 'Ici le rectangle marqué fixe l’échelle ; la longueur connue lui est comparée.',
    lengths:
      'La moyenne de {count} longueurs connues est pondérée par leurs incertitudes ; ensemble elles donnent {scale}.',
    ball: 'C’est l’image {frame}, au milieu de celles utilisées.',
    seal: 'Les deux instants partagent le temps du film ; leur corrélation est {r}.',
    result: 'Ramenée au plan de bouche par l’ajustement : v = {speed}.',
    models: 'Le film dit {speed} : {share} de cela.',
  },
  parts: {
    scale: 'De quoi se compose l’incertitude de l’échelle. Les carrés s’ajoutent : {u} en tout.',
    result:
      'De quoi se compose l’incertitude de la vitesse, du plus grand au plus petit. Les carrés s’ajoutent : {u} en tout, en incertitude-type.',
    rest: 'toutes les autres ensemble',
  },
  mistakeIn: {
    footage:
      'Une image se perd à l’enregistrement ou à la copie, et personne ne le voit : la bille semble sauter.',
    clock:
      'La cadence de lecture du fichier, ou un réglage d’un autre jour, est prise pour la cadence d’enregistrement.',
    rolling:
      'Un téléphone lit ligne après ligne, mais on le traite comme s’il prenait chaque image d’un coup.',
    scale: 'La règle est sur l’établi ou au mur, pas dans le plan du vol.',
    ball: 'Une pose longue pour plus de lumière : la bille devient une traînée, son centre moins sûr.',
    seal: 'Un repère sur un objet derrière le tube est pris pour la bouche : vu de biais, il est ailleurs.',
    result: 'La règle était derrière le vol, et la petite incertitude n’en laisse rien voir.',
    models:
      'On croit un film au-dessus du maximum, alors que sa cadence d’enregistrement était fausse.',
  },
};
