import type { English, SameShape } from '../catalogue';

export const advice: SameShape<English['report']['advice']> = {
  line: '{remedy}; si este dato se conociera con exactitud, la incertidumbre sería un {smaller} menor.',
  unknown: 'Averigüe más sobre este dato ({source})',
  remedy: {
    'known length':
      'Use una escala de longitud mejor conocida: una regla grabada en lugar de una cinta',
    'ends of the known length':
      'Use una longitud conocida mayor, o con marcas más finas, y sitúe sus extremos en una imagen ampliada',
    'depth of the known length':
      'Lleve la escala a la línea de vuelo, mida mejor a qué distancia de ella está, o filme desde más lejos',
    'camera distance':
      'Lleve la escala a la línea de vuelo, o mida mejor la distancia del objetivo a la línea de vuelo',
    'lens distortion':
      'Calibre el objetivo con más imágenes que lleguen a las esquinas, o mantenga el vuelo cerca del centro de la imagen',
    'lens centre':
      'Calibre el objetivo con más imágenes que lleguen a las esquinas, o mantenga el vuelo cerca del centro de la imagen',
    'focal length':
      'Calibre el objetivo con el mismo zoom y enfoque de la película, con más imágenes',
    'corners of the plane':
      'Marque un rectángulo mayor, con las esquinas situadas en una imagen ampliada',
    'size of the plane': 'Mida mejor la anchura y la altura del rectángulo marcado',
    'depth of the plane':
      'Lleve el rectángulo marcado a la línea de vuelo, o mida a qué distancia de ella está',
    'direction of the flight': 'Siga la bola en un tramo más largo',
    'recording rate':
      'Mida la cadencia verdadera de la cámara con una lámpara o un temporizador de frecuencia conocida',
    "the file's time stamps":
      'Filme una lámpara o un temporizador de frecuencia conocida e indique la cadencia de grabación así hallada',
    'frame times': 'Filme con una cámara de cadencia uniforme, o use más fotogramas tras la boca',
    'time per line':
      'Mida el tiempo por línea con una lámpara parpadeante, o gire la cámara para que sus líneas se lean de través al vuelo',
    'place of the muzzle plane': 'Marque mejor el plano de la boca, en una imagen ampliada',
    'ball centres':
      'Consiga más fotogramas tras la boca con mayor cadencia o un campo más amplio, o centros más nítidos con más luz y la cámara más cerca',
    'air drag as filmed':
      'Filme un tramo más largo del vuelo, en el que la bola se frene visiblemente',
    'air drag as expected':
      'Filme un tramo más largo del vuelo, en el que la bola se frene visiblemente',
    'loss in the muzzle zone as filmed':
      'Consiga más fotogramas, o centros más nítidos, a menos de tres diámetros de bola de la boca y poco más allá',
    'loss in the muzzle zone as expected':
      'Haga que el campo empiece en la boca y filme mucho más allá de tres diámetros de bola, para que la pérdida allí se vea y no se suponga',
    'shape of the muzzle zone':
      'Haga que el campo empiece en la boca y filme mucho más allá de tres diámetros de bola, para que la pérdida allí se vea y no se suponga',
    'choice of model':
      'Filme un tramo más largo del vuelo con más fotogramas, que permita distinguir los modelos',
    'refraction in the wall of the tube':
      'Filme el extremo del tubo de frente y desde más lejos, para no mirar oblicuamente a través de su pared',
    'air drag left out':
      'Deje que el modelo se elija automáticamente, lo que cuenta la resistencia del aire',
    'ball diameter': 'Mida la bola con un calibre en varias direcciones',
    'ball mass': 'Pese la bola',
    'air density': 'Lea el termómetro y el barómetro junto al lanzador',
    'air temperature': 'Lea un termómetro junto al lanzador',
    'air pressure': 'Lea un barómetro a la altura del lanzador, sin reducir al nivel del mar',
    'air humidity': 'Lea un higrómetro junto al lanzador',
  },
};
