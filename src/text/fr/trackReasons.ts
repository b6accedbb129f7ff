import type { Catalogue } from '../catalogue';

/** Where the ball was not found or followed, and how it turns. */
export const trackReasons: Catalogue['reasons'] = {
  againstDirection: {
    message: 'Une bille est visible, mais elle vole dans une autre direction que celle indiquée.',
    remedy:
      'Tournez la direction du vol dans le sens de celui-ci, ou laissez-la se déduire de la trajectoire.',
  },
  besideMuzzle: {
    message: 'Une bille est visible, mais sa trajectoire ne passe pas par la bouche marquée.',
    remedy: 'Marquez la bouche là où le vol la quitte.',
  },
  lookDisagrees: {
    message:
      'Avec l’aspect de la bille que révèle le film lui-même, on la trouve ailleurs dans presque toutes les images : quelque chose de semblable l’accompagne, son ombre par exemple.',
    remedy: 'Allez à l’image : placez le centre à la main si la bille s’y voit, ou écartez-la.',
  },
  tumbles: {
    message:
      'Ce qui a été suivi n’est rond que par moments, comme un morceau plat qui culbute : ce n’est pas la bille.',
    remedy: 'Indiquez dans une image ce qui est la bille, ou tracez la zone de vol autour d’elle.',
  },
  noMark: {
    message:
      'Rien ne semble tourner sur la face de la bille : elle ne porte aucun repère net, ou ne tourne presque pas.',
    remedy:
      'Dessinez sur la bille un point ou un trait foncé, à l’écart de son milieu vu par la caméra.',
  },
  turnsTooLittle: {
    message:
      'Ce qui change sur la face de la bille d’une image à l’autre est trop faible pour distinguer un repère qui tourne de la lumière qu’elle reçoit.',
    remedy:
      'Prenez comme repère un point foncé, que la lumière ne peut produire, ou filmez un trajet plus long.',
  },
  spinOutOfPlane: {
    message:
      'La face de la bille change d’une image à l’autre, mais pas comme avec un repère qui tourne dans le plan de l’image : elle tourne autour d’un autre axe, ou quelque chose passe devant.',
    remedy:
      'Seule la rotation autour de l’axe de visée peut être mesurée ; placez le repère et la caméra en conséquence.',
  },
};
