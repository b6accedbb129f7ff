import type { Catalogue } from '../catalogue';

/** What is wrong with a table or a shot of the notebook. */
export const notebookReasons: Catalogue['reasons'] = {
  csvEmpty: {
    message: 'La tabla no tiene ninguna fila bajo el encabezado.',
    remedy: 'Escriba una fila por disparo.',
  },
  notInTable: {
    message: 'La tabla no lo indica.',
  },
  notReduced: {
    message: 'Este disparo aún no se ha reducido.',
    remedy: 'Abra su película, mídala y añádalo de nuevo al cuaderno.',
  },
  resultOfOtherFootage: {
    message:
      'El resultado es de otra grabación que el disparo de este nombre; el disparo se conserva como no reducido.',
    remedy: 'Reduzca de nuevo el disparo.',
  },
  resultWithoutShot: {
    message:
      'Junto al resultado no hay ningún archivo de disparo con este nombre, así que no se sabe qué comparte con otros.',
    remedy: 'Elija los dos archivos, NOMBRE.shot.json y NOMBRE.result.json.',
  },
};
