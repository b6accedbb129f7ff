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
      'Avec l’aspect de la bille que révèle le film lui-même, on la trouve ailleurs dans presque toutes les images : quelque chose de semblable l’accompagne, son ombre par exemple.',
    remedy: 'Allez à l’image : placez le centre à la main si la bille s’y voit, ou écartez-la.',
  },
  tumbles: {
    message:
      'Ce qui a été suivi n’est rond que par moments, comme un morceau plat qui culbute : ce n’est pas la bille.',
    remedy: 'Indiquez dans une image ce qui est la bille, ou tracez la zone de vol autour d’elle.',
  },
  noMark: {
    message:
      'Rien ne semble tourner sur la face de la bille : elle ne porte aucun repère net, ou ne tourne presque pas.',
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
      'La face de la bille change d’une image à l’autre, mais pas comme avec un repère qui tourne dans le plan de l’image : elle tourne autour d’un autre axe, ou quelque chose passe devant.',
    remedy:
      'Seule la rotation autour de l’axe de visée peut être mesurée ; placez le repère et la caméra en conséquence.',
  },
  noBall: {
    message:
      '{form, select, noDisc {Le contour dans l’image {frame}, près de ({x}, {y}), ne correspond à aucun disque.} noOutline {Dans l’image {frame}, près de ({x}, {y}), aucun contour de la taille de la bille ne se détache.} unsteady {Ce qui se détache dans l’image {frame}, près de ({x}, {y}), n’a pas une forme de disque stable.} elsewhere {Le disque de l’image {frame}, près de ({x}, {y}), n’est pas là où les autres images montrent la bille, ou pas aussi clair qu’elle.} unmeasured {La bille n’a pas été mesurée dans cette image.} other {Aucune bille trouvée : {search, select, nothing {dans aucune des {frames} images, rien de la taille de la bille ne se détache du fond.} other {rien de la taille de la bille ne se déplace régulièrement dans le film, bien que {seen} images sur {frames} montrent quelque chose d’à peu près cette taille.}}{search, select, nearest { Le plus proche : {because}} other {}}}}',
    remedy:
      '{form, select, noDisc {Placez le centre à la main ou écartez l’image.} noOutline {Allez à l’image : placez le centre à la main si la bille s’y trouve.} unsteady {Placez le centre à la main ou écartez l’image.} elsewhere {Allez à l’image : placez le centre à la main si la bille s’y voit, ou écartez-la.} unmeasured {Placez le centre à la main ou mesurez de nouveau.} other {Vérifiez la longueur connue et le diamètre de la bille (ils donnent la taille cherchée), la zone de vol et que le clip montre la bille ; ou placez son centre à la main dans au moins trois images.}}',
  },
  lowContrast: {
    message:
      'Dans l’image {frame}, près de ({x}, {y}), la bille ne diffère du fond que de {grey} niveaux de gris.',
    remedy: 'Éclairez la bille ou assombrissez le fond ; écartez cette image.',
  },
  radiusMismatch: {
    message:
      'Le disque de l’image {frame}, près de ({x}, {y}), a un rayon de {found} px ; {expected} px sont attendus d’après le diamètre de la bille et l’échelle.',
    remedy:
      'Vérifiez le diamètre de la bille et la longueur connue ; si les deux sont justes, ce n’est pas la bille.',
  },
  atFrameEdge: {
    message:
      'Dans l’image {frame}, près de ({x}, {y}), le bord laisse voir {form, select, little {trop peu} other {seulement {share}}} du contour de la bille.',
    remedy: 'Écartez cette image ; d’autres montrent mieux la bille.',
  },
  arcTooShort: {
    message:
      'Dans l’image {frame}, près de ({x}, {y}), on voit {form, select, little {trop peu} other {seulement {share}}} du contour de la bille.',
    remedy: 'Écartez cette image ; d’autres montrent mieux la bille.',
  },
  besideSeeds: {
    message:
      '{form, select, thing {Quelque chose dans les images {first} à {last} ne passe pas là où la bille est indiquée.} other {Une bille est visible, mais sa trajectoire ne passe pas là où elle est indiquée.}}',
    remedy: 'Déplacez sur la bille les endroits indiqués comme étant la bille, ou retirez-les.',
  },
  standsStill: {
    message:
      'Quelque chose d’à peu près la bonne taille dans les images {first} à {last} ne bouge presque pas.',
  },
  otherPath: {
    message:
      'Quelque chose d’à peu près la bonne taille dans les images {first} à {last} {form, select, tooFast {se déplace plus vite que la bille ne le peut} otherWay {se déplace dans une autre direction que celle indiquée} other {ne vient pas de la bouche}}.',
  },
  notRound: {
    message:
      'Quelque chose qui bouge dans les images {first} à {last} n’a pas la taille ni la forme ronde de la bille (ressemblance {likeness}).',
  },
  otherSize: {
    message:
      'Quelque chose de rond dans les images {first} à {last} a {times} fois le diamètre de la bille.',
  },
  tooFewSightings: {
    message:
      'Quelque chose de la bonne taille n’est visible que dans {count} des {span} images de {first} à {last}.',
  },
  unsteady: {
    message:
      'Quelque chose de la bonne taille dans les images {first} à {last} change trop de vitesse pour une bille en vol libre.',
  },
  slowsTooMuch: {
    message:
      'Quelque chose de la bonne taille dans les images {first} à {last} perd {change} de sa vitesse, plus que l’air ne peut en prendre à la bille.',
  },
  twoBalls: {
    message:
      'Deux objets se déplacent comme la bille et lui ressemblent : l’un est visible dans les images {first} à {last}, l’autre dans les images {otherFirst} à {otherLast}.',
    remedy: 'Indiquez dans une image lequel est la bille, ou tracez la zone de vol autour d’elle.',
  },
  fewerFrames: {
    message:
      'Un autre objet suit sa propre trajectoire sur {frames, plural, one {# image} other {# images}}, moins que les {ball} de la bille.',
  },
  lessAlike: {
    message:
      'Un autre objet dans les images {first} à {last} suit sa propre trajectoire, mais ressemble moins à la bille : par la taille, la rondeur ou la netteté.',
  },
  tooUncertain: {
    message:
      '{form, select, all {Dans l’image {frame} et la plupart des autres, le centre n’est connu qu’à {u} px : un reflet, une ombre ou de la brume près de la bille cache où elle finit.} other {Dans l’image {frame}, le centre n’est connu qu’à {u} px ; dans la moitié des images, à {usual} px.}}',
    remedy: 'Allez à l’image : placez le centre à la main si la bille s’y voit, ou écartez-la.',
  },
  ballBroke: {
    message:
      'La bille est entière jusqu’à l’image {whole} ; à partir de l’image {broken}, ce sont des morceaux.',
    remedy:
      'Les images d’avant sont utilisées ; filmez une plus grande part du vol avant que la bille se brise.',
  },
  offPath: {
    message:
      '{form, select, strayed {Ce qui a été mesuré dans l’image {frame} n’est pas ce qui a été suivi : c’est à plus de {off} px à côté.} along {Ce qui a été mesuré dans l’image {frame} s’écarte de {off} px de la trajectoire des autres images, le long du vol.} other {Ce qui a été mesuré dans l’image {frame} s’écarte de {off} px de la trajectoire des autres images, en travers du vol.}}',
    remedy: 'Allez à l’image : placez le centre à la main si la bille s’y voit, ou écartez-la.',
  },
  fewFaces: {
    message:
      'La face entière de la bille {frames, plural, =0 {n’est visible dans aucune image} one {est visible dans # image} other {est visible dans # images}} ; il en faut au moins {fewest} pour dire comment elle tourne.',
    remedy: 'Filmez un trajet plus long de vol libre.',
  },
  markSmeared: {
    message:
      'Pendant une pose, la bille se déplace de plus de {most} fois son rayon, ce qui brouille un repère sur elle.',
    remedy: 'Raccourcissez la pose et ajoutez de la lumière.',
  },
  spinAmbiguous: {
    message:
      'Le repère a le même aspect dans chaque image si la bille tourne à {other} au lieu de {rate} rad/s ; la rotation la plus lente est indiquée.',
    remedy:
      'Filmez à une cadence plus élevée, ou prenez un repère qui ne se retrouve pareil qu’après un tour complet : un seul point.',
  },
};
