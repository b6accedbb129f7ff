import type { Catalogue } from '../catalogue';

/** What the film shows that a person should hear of. */
export const filmReasons: Catalogue['reasons'] = {
  lightFlickers: {
    message:
      'La luminosité de la scène immobile varie entre {dimmest} et {brightest} de son niveau habituel.',
    remedy:
      'Éclairez la scène avec une lampe à courant continu, ou vérifiez que la caméra était immobile.',
  },
  framesRepeated: {
    message: 'La bille reste immobile entre des images ({between}) : une image semble répétée.',
    remedy:
      'Prenez le fichier d’origine de la caméra, pas une copie convertie, ou rejetez les répétitions.',
  },
  longBlur: {
    message: 'Pendant une pose, la bille se déplace de {blur} pixels, plus que son diamètre.',
    remedy: 'Raccourcissez la pose et ajoutez de la lumière.',
  },
  ballSaturated: {
    message:
      'La bille est surexposée dans {saturated} images sur {frames} ; son contour peut être décalé.',
    remedy: 'Filmez avec moins de lumière, un diaphragme plus fermé ou une pose plus courte.',
  },
  filmUnchecked: {
    message:
      'Le décodeur du navigateur montre certains dommages sans le dire, et le second décodeur, un processus d’arrière-plan à part, n’a pas pu vérifier le film. {because}',
    remedy: 'Mesurez à nouveau, ou dépouillez le tir en ligne de commande.',
  },
  faultyPixels: {
    message:
      'Pixels morts, trop clairs ou scintillants sur le passage de la bille : {pixels}. Ils sont laissés hors de tout ajustement.',
    remedy:
      'Rien pour ce tir. Avant le prochain, refaites l’équilibrage du noir de la caméra, objectif couvert, ou déplacez le champ pour que le vol les évite.',
  },
  cameraShakes: {
    message:
      'L’image tremble de {rms} px (moyenne quadratique), jusqu’à {most} px ; les centres en sont corrigés, la rotation autour de l’axe de visée ne l’est pas.',
    remedy: 'Installez la caméra à l’écart du lanceur, sur un support plus lourd.',
  },
  launcherMoves: {
    message:
      'Avant que la bille sorte, l’extrémité du lanceur se déplace jusqu’à {most} px par rapport à la scène qui l’entoure ; le plan de bouche est supposé immobile.',
    remedy: 'Fixez le lanceur, ou marquez la bouche là où elle se trouve à la sortie de la bille.',
  },
};
