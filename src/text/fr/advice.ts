import type { English, SameShape } from '../catalogue';

export const advice: SameShape<English['report']['advice']> = {
  line: '{remedy} ; si cette donnée était connue exactement, l’incertitude serait plus petite de {smaller}.',
  unknown: 'Renseignez-vous davantage sur cette donnée ({source})',
  remedy: {
    'known length':
      'Utilisez une échelle de longueur mieux connue : une règle gravée plutôt qu’un ruban',
    'ends of the known length':
      'Utilisez une longueur connue plus grande, ou aux repères plus fins, et placez ses extrémités sur une image agrandie',
    'depth of the known length':
      'Amenez l’échelle sur la ligne de vol, mesurez mieux son écart, ou filmez de plus loin',
    'camera distance':
      'Amenez l’échelle sur la ligne de vol, ou mesurez mieux la distance de l’objectif à la ligne de vol',
    'lens distortion':
      'Étalonnez l’objectif avec plus d’images qui atteignent les coins, ou gardez le vol près du milieu de l’image',
    'lens centre':
      'Étalonnez l’objectif avec plus d’images qui atteignent les coins, ou gardez le vol près du milieu de l’image',
    'focal length':
      'Étalonnez l’objectif au zoom et à la mise au point mêmes du film, avec plus d’images',
    'corners of the plane':
      'Marquez un rectangle plus grand, ses coins placés sur une image agrandie',
    'size of the plane': 'Mesurez mieux la largeur et la hauteur du rectangle marqué',
    'depth of the plane':
      'Amenez le rectangle marqué sur la ligne de vol, ou mesurez à quelle distance il s’en trouve',
    'direction of the flight': 'Suivez la bille sur une plus longue distance',
    'recording rate':
      'Mesurez la cadence vraie de la caméra avec une lampe ou un minuteur de fréquence connue',
    "the file's time stamps":
      'Filmez une lampe ou un minuteur de fréquence connue et indiquez la cadence d’enregistrement ainsi trouvée',
    'frame times':
      'Filmez avec une caméra à cadence régulière, ou utilisez plus d’images après la bouche',
    'time per line':
      'Mesurez le temps de lecture par ligne avec une lampe scintillante, ou tournez la caméra pour que ses lignes soient lues en travers du vol',
    'place of the muzzle plane': 'Marquez mieux le plan de bouche, sur une image agrandie',
    'ball centres':
      'Obtenez plus d’images après la bouche par une cadence plus élevée ou un champ plus large, ou des centres plus nets par plus de lumière et une caméra plus proche',
    'air drag as filmed':
      'Filmez une plus longue portion du vol, sur laquelle la bille ralentit visiblement',
    'air drag as expected':
      'Filmez une plus longue portion du vol, sur laquelle la bille ralentit visiblement',
    'loss in the muzzle zone as filmed':
      'Obtenez plus d’images, ou des centres plus nets, à moins de trois diamètres de bille de la bouche et juste au-delà',
    'loss in the muzzle zone as expected':
      'Faites commencer le champ à la bouche et filmez bien au-delà de trois diamètres de bille, pour que la perte y soit vue et non supposée',
    'shape of the muzzle zone':
      'Faites commencer le champ à la bouche et filmez bien au-delà de trois diamètres de bille, pour que la perte y soit vue et non supposée',
    'choice of model':
      'Filmez une plus longue portion du vol avec plus d’images, ce qui départage les modèles',
    'refraction in the wall of the tube':
      'Filmez l’extrémité du tube de face et de plus loin, pour ne pas regarder de biais à travers sa paroi',
    'air drag left out':
      'Laissez choisir le modèle automatiquement, ce qui compte la traînée de l’air',
    'ball diameter': 'Mesurez la bille au pied à coulisse dans plusieurs directions',
    'ball mass': 'Pesez la bille',
    'air density': 'Lisez thermomètre et baromètre à côté du lanceur',
    'air temperature': 'Lisez un thermomètre à côté du lanceur',
    'air pressure': 'Lisez un baromètre à la hauteur du lanceur, non ramené au niveau de la mer',
    'air humidity': 'Lisez un hygromètre à côté du lanceur',
  },
};
