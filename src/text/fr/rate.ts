import type { English, SameShape } from '../catalogue';

export const rateCheck: SameShape<English['panels']['rateCheck']> = {
  title: 'Vérifier la cadence sur le film',
  timer: 'Un chronomètre dans l’image',
  first: 'Première lecture : {frame, select, none {cette image} other {image {frame}}}',
  second: 'Seconde lecture : {frame, select, none {cette image} other {image {frame}}}',
  elapsed: 'Temps écoulé au chronomètre',
  readingU: '± u d’une lecture',
  workOut: 'Calculer la cadence',
  lamp: 'Une lampe qui scintille avec le secteur',
  mains: 'Fréquence du secteur',
  look: 'Chercher le scintillement',
  reading: 'Lecture des images',
  gives: 'Le film donne {rate}',
  agrees: 'Le film donne {rate}, en accord avec la cadence indiquée.',
  apart: 'Le film donne {rate}, à {number} incertitudes-types de la cadence indiquée.',
  use: 'Utiliser cette cadence',
};

export const lamp: SameShape<English['panels']['lamp']> = {
  title: 'Le mesurer avec une lampe',
  how: 'Filmez une lampe branchée sur le secteur, ou un mur uniformément éclairé, avec les réglages du tir et un temps de pose court. La lampe scintille deux fois par période du secteur ; un obturateur déroulant en fait des bandes en travers du sens de lecture, qui se déplacent d’une image à l’autre.',
  clock: 'Origine du temps dans ce clip',
  recordingRate: 'La cadence de prise de vue indiquée plus haut',
  containerTimestamps: 'Horodatage de son fichier',
  direction: 'Sens de lecture',
  notKnown: 'inconnu',
  directionHint: 'N’est retenu que si le clip s’accorde aussi bien avec les deux sens.',
  lacksRate:
    'Aucune cadence de prise de vue n’est indiquée plus haut. Indiquez-la ou utilisez l’horodatage.',
  file: 'Clip d’une lampe',
  choose: 'Choisir le clip de la lampe…',
  doing: 'Lecture de la lampe',
  inFile: '{name} : {said}',
  seen: '{frames} images de {name} ; le scintillement représente {percent} % de la lumière.',
  use: 'Utiliser ce temps par ligne',
  useGlobal: 'Utiliser un obturateur global',
  offFrequency:
    'D’après l’horloge du clip, la lampe scintille à {rate}, ce qui n’est pas le double de la fréquence du secteur.',
  offFrequencyRemedy: 'Vérifiez la fréquence du secteur et l’origine du temps du clip.',
  otherSize:
    'La lampe a été filmée en {width} sur {height} pixels, le tir en {filmWidth} sur {filmHeight} ; beaucoup de caméras lisent alors les lignes à un autre rythme.',
  otherSizeRemedy: 'Filmez la lampe avec les réglages du tir.',
  notRolling:
    'Aucune lecture ligne à ligne n’est visible : une ligne prend {time}, comme avec un obturateur global.',
  rolls:
    'Les lignes sont lues {direction}{assumed, select, yes { (sens que le clip laisse indéterminé et que vous avez indiqué)} other {}}, {time} chacune : {whole} pour les {lines}.',
};
