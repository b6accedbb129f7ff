import type { Catalogue } from '../catalogue';
import { calibrationReasons } from './calibrationReasons';
import { checks } from './checks';
import { filmReasons } from './filmReasons';
import { footageReasons } from './footageReasons';
import { inputReasons } from './inputReasons';
import { launchReasons } from './launchReasons';
import { notebookReasons } from './notebookReasons';
import { planReasons } from './planReasons';
import { resultReasons } from './resultReasons';
import { sealReasons } from './sealReasons';
import { trackReasons } from './trackReasons';
import { workReasons } from './workReasons';

export const reasons: Catalogue['reasons'] = {
  ...checks,
  ...calibrationReasons,
  ...filmReasons,
  ...footageReasons,
  ...inputReasons,
  ...launchReasons,
  ...notebookReasons,
  ...planReasons,
  ...resultReasons,
  ...sealReasons,
  ...trackReasons,
  ...workReasons,
  noRate: {
    message: 'La cadence de prise de vue n’est pas encore connue.',
    remedy:
      'Indiquez la cadence réglée sur la caméra ; celle du fichier n’est souvent que la cadence de lecture.',
  },
  noLength: {
    message: 'Aucune longueur connue n’est encore tracée.',
    remedy:
      'Tracez dans le plan de vol une ligne entre deux repères dont la distance est connue, ou marquez un rectangle de taille connue.',
  },
  lengthUnstated: {
    message: 'La longueur {number} est tracée, mais sa valeur manque.',
    remedy: 'Indiquez la distance entre les deux repères ou retirez la ligne.',
  },
  planeUnstated: {
    message: 'Le plan est marqué, mais sa largeur ou sa hauteur manque.',
    remedy: 'Indiquez les deux côtés du rectangle ou retirez-le.',
  },
  noMuzzle: {
    message: 'Le plan de bouche n’est pas encore marqué.',
    remedy:
      'Marquez l’extrémité du tube sur le film : c’est là que la vitesse de sortie est donnée.',
  },
  lengthsDisagree: {
    message:
      'Les longueurs connues s’écartent de plus que leurs incertitudes (khi-deux {chiSquare} pour {dof}).',
    remedy:
      'Vérifiez les extrémités et la valeur de chaque longueur, et que toutes sont dans le plan de vol.',
  },
  planeDisagrees: {
    message:
      'Les longueurs connues et le plan marqué s’écartent de plus que leurs incertitudes (khi-deux {chiSquare} pour {dof}) ; le plan fixe l’échelle.',
    remedy:
      'Vérifiez les coins, la largeur et la hauteur du plan, les extrémités de chaque longueur et leur profondeur.',
  },
  timestampsUneven: {
    message:
      'L’horodatage du fichier est irrégulier ({gaps, plural, one {# lacune} other {# lacunes}}), alors qu’une cadence régulière est utilisée.',
    remedy:
      'Pour un clip de téléphone, utilisez l’horodatage du fichier ; sinon, indiquez les images perdues.',
  },
  framesLost: {
    message:
      '{form, select, jumps {La bille saute entre des images ({between}) : des images y semblent perdues.} other {L’horodatage laisse place à des images perdues à {places, plural, one {# endroit} other {# endroits}} ; leurs instants sont gardés tels quels.}}',
    remedy:
      '{form, select, jumps {Indiquez les images perdues à l’étape Temps.} other {Rien à faire si la caméra a perdu des images ; l’ajustement utilise les instants indiqués.}}',
  },
  playbackRateSuspected: {
    message: 'L’horodatage donne {rate} images/s, une cadence de lecture courante.',
    remedy:
      'Si la caméra a filmé plus vite, indiquez sa cadence de prise de vue : toutes les vitesses lui sont proportionnelles.',
  },
  droppedOutside: {
    message:
      'Des images perdues sont indiquées après l’image {after}, mais le film se termine à l’image {last}.',
    remedy: 'Corrigez la liste des images perdues.',
  },
  noTimestamps: {
    message: 'Le fichier ne contient pas d’horodatage.',
    remedy: 'Indiquez à la place la cadence de prise de vue.',
  },
  timestampsNotRising: {
    message: 'L’horodatage du fichier ne croît pas à l’image {frame}.',
    remedy: 'Indiquez à la place la cadence de prise de vue.',
  },
  empty: {
    message: 'Il manque une valeur.',
    remedy: 'Saisissez un nombre, avec son unité si elle diffère de celle affichée.',
  },
  notANumber: {
    message: '« {typed} » n’est pas un nombre.',
    remedy: 'Saisissez un nombre, avec son unité si elle diffère de celle affichée.',
  },
  decimalOrThousands: {
    message: '« {typed} » peut se lire avec des milliers ou avec des décimales.',
    remedy:
      'Écrivez les décimales avec une virgule et les milliers avec une espace ou sans rien : 7,87 ou 12 000.',
  },
  unknownUnit: {
    message: '« {unit} » n’est pas une unité possible ici.',
    remedy:
      '{known, select, no {Saisissez le nombre seul.} other {Utilisez l’une de celles-ci : {known}.}}',
  },
  divisionByZero: {
    message: '« {typed} » divise par zéro.',
    remedy: 'Saisissez un dénominateur non nul.',
  },
  notPositive: {
    message: 'La valeur doit être supérieure à 0 ; {value} ne l’est pas.',
  },
  negative: {
    message: 'La valeur ne peut pas être négative ; {value} l’est.',
  },
  notWhole: {
    message: 'La valeur doit être un nombre entier.',
  },
  outOfRange: {
    message:
      'La valeur doit être {sides, select, least {d’au moins {least}} most {d’au plus {most}} other {comprise entre {least} et {most}}} ; {value} ne convient pas.',
  },
  earlierInputs: {
    message:
      'Des données pour cet enregistrement ont été gardées le {savedAt, date, long} à {savedAt, time, short}.',
    remedy: 'Reprenez-les, ou continuez tel quel.',
  },
};
