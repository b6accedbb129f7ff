import type { Catalogue } from '../catalogue';

/** What film and sound do not tell of the burst. */
export const sealReasons: Catalogue['reasons'] = {
  bulgeNotSeen: {
    message:
      'Aucune image d’avant la déchirure ne montre la membrane hors de sa position de repos.',
  },
  bulgeTooFaint: {
    message: 'La membrane se détache trop peu de la scène pour être suivie.',
  },
  onsetBeforeClip: {
    message: 'La membrane bouge déjà quand le clip commence.',
  },
  restHidden: {
    message:
      'La scène derrière la membrane diffère de la membrane au repos de plus que son premier mouvement.',
  },
  burstNotSeen: {
    message: 'La membrane bouge, mais aucune image ne la montre déchirée.',
    remedy:
      'Vérifiez la zone de la membrane, ou indiquez à la main les images qui entourent la rupture.',
  },
  sealOpenFromStart: {
    message: 'Des morceaux de la membrane volent déjà dans les premières images.',
    remedy: 'Utilisez un clip qui commence avant la rupture de la membrane.',
  },
  sealRestHidden: {
    message:
      'Les premières images diffèrent de la scène à laquelle la membrane est comparée, ce qui cache le bombement.',
    remedy:
      'Utilisez un clip qui commence avec la membrane au repos, ou indiquez à la main les images qui entourent la rupture.',
  },
  noSealInView: {
    message: 'Il est indiqué qu’aucune membrane de bouche n’est dans le champ.',
  },
  rearSealPlaneMissing: {
    message:
      'La membrane arrière est indiquée sans son plan, et rien d’autre ne dit où il se trouve.',
    remedy: 'Indiquez un point du plan de la membrane arrière.',
  },
  noBackstop: {
    message: 'Le tir n’indique pas de butée.',
  },
  impactBeforeExit: {
    message: 'D’après le son, la bille frappe la butée avant de quitter la bouche.',
    remedy:
      'Vérifiez le décalage entre le son et l’image, et les distances du microphone et de la butée.',
  },
  soundUnplaced: {
    message:
      'Le film ne montre ni la rupture ni la sortie ; le premier son fort de la piste est donc pris pour la rupture.',
    remedy: 'Écoutez la piste : la perforation d’une membrane arrière s’entend avant la rupture.',
  },
  burstFramesOutside: {
    message:
      'La membrane est indiquée entière à l’image {whole} et ouverte à l’image {open} ; le clip montre les images {first} à {last}.',
    remedy: 'Indiquez deux images du clip, d’abord celle où la membrane est entière.',
  },
  burstAmbiguous: {
    message:
      'L’image {faint} montre un léger signe de déchirure, l’image {plain} des signes nets. La rupture est placée entre les images {whole} et {open}.',
    remedy: 'Parcourez ces images et indiquez à la main les deux qui entourent la rupture.',
  },
  burstWithBall: {
    message:
      'À l’image {whole}, la membrane est encore entière, et à l’image {through} la bille a déjà passé son plan.',
    remedy: 'Une cadence plus élevée séparerait les deux événements.',
  },
  sealNotSeen: {
    message:
      '{form, select, late {Dans toutes les images qui montrent la membrane, la bille a déjà passé son plan.} other {Rien ne bouge au plan de la membrane avant la bille : aucune membrane n’est dans le champ, ou elle s’est ouverte avant le début du clip.}}',
    remedy:
      '{form, select, late {Utilisez un clip qui commence avant que la bille quitte le tube.} other {Vérifiez le plan de bouche et la zone de la membrane, ou indiquez qu’aucune membrane n’est dans le champ.}}',
  },
  sealRegionOutside: {
    message:
      '{form, select, unset {Il manque à la membrane la direction du vol ou la taille de la bille pour délimiter sa zone.} other {La zone de la membrane ne laisse pas de place, dans l’image de {width} x {height} pixels, pour l’observer hors de son plan.}}',
    remedy:
      '{form, select, unset {Fixez la direction du vol et le diamètre de la bille.} other {Déplacez le plan de bouche, ou tracez la zone de la membrane de sorte qu’elle contienne le plan et un peu d’espace au-dehors.}}',
  },
  soundDisagrees: {
    message:
      'D’après le son, la membrane s’est rompue {by} ms {form, select, later {plus tard} other {plus tôt}} que sur le film, plus que leurs incertitudes ne l’expliquent.',
    remedy:
      'Vérifiez le décalage entre le son et l’image avec un claquement de mains filmé, la distance du microphone et les images de la rupture.',
  },
  microphoneNear: {
    message:
      'Le microphone est à {distance} m de la bouche, où le front de l’onde va plus vite que le son et son temps est moins bien connu.',
    remedy: 'Placez-le à un mètre ou plus, et mesurez la distance.',
  },
  soundTooShort: {
    message:
      'La piste son ne couvre pas l’instant {what, select, burst {de la rupture} other {de l’impact}} avec un peu de calme avant.',
    remedy:
      'En coupant le clip, gardez le son d’avant à après le tir, et vérifiez le décalage entre le son et l’image.',
  },
  noSoundOnset: {
    message:
      '{what, select, any {Le son n’a aucun début dont l’instant puisse être déterminé.} burst {Là où la rupture devrait s’entendre, aucun son ne se détache du bruit.} other {Là où l’impact devrait s’entendre, aucun son ne se détache du bruit.}}',
    remedy:
      'Vérifiez le décalage entre le son et l’image, ou enregistrez avec le microphone plus près et un gain fixe.',
  },
  soundClipped: {
    message:
      'Le son {what, select, burst {de la rupture} other {de l’impact}} est saturé : ses crêtes sont écrêtées.',
    remedy: 'Baissez le niveau du microphone ou placez-le plus loin, à une distance connue.',
  },
  sealFilmTooLong: {
    message: 'Plus de {most} images sont à regarder de près, trop pour suivre une membrane.',
    remedy: 'Coupez le clip autour du tir, ou retirez ce qui bouge d’autre.',
  },
};
