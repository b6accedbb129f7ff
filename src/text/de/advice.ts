import type { English, SameShape } from '../catalogue';

export const advice: SameShape<English['report']['advice']> = {
  line: '{remedy}; wäre diese Eingabe exakt bekannt, wäre die Unsicherheit um {smaller} kleiner.',
  unknown: 'Bringen Sie mehr über diese Eingabe in Erfahrung ({source})',
  remedy: {
    'known length':
      'Verwenden Sie einen Maßstab, dessen Länge besser bekannt ist: eine gravierte Leiste statt eines Bandmaßes',
    'ends of the known length':
      'Verwenden Sie eine größere bekannte Länge oder eine mit feineren Marken, und setzen Sie ihre Enden im vergrößerten Bild',
    'depth of the known length':
      'Bringen Sie den Maßstab an die Fluglinie, messen Sie seinen Abstand von ihr genauer, oder filmen Sie aus größerer Entfernung',
    'camera distance':
      'Bringen Sie den Maßstab an die Fluglinie, oder messen Sie den Abstand vom Objektiv zur Fluglinie genauer',
    'lens distortion':
      'Kalibrieren Sie das Objektiv mit mehr Bildern, die bis in die Ecken reichen, oder halten Sie den Flug nahe der Bildmitte',
    'lens centre':
      'Kalibrieren Sie das Objektiv mit mehr Bildern, die bis in die Ecken reichen, oder halten Sie den Flug nahe der Bildmitte',
    'focal length':
      'Kalibrieren Sie das Objektiv genau bei Brennweite und Schärfe des Films, mit mehr Bildern',
    'corners of the plane':
      'Markieren Sie ein größeres Rechteck und setzen Sie seine Ecken im vergrößerten Bild',
    'size of the plane': 'Messen Sie Breite und Höhe des markierten Rechtecks genauer',
    'depth of the plane':
      'Bringen Sie das markierte Rechteck an die Fluglinie, oder messen Sie, wie weit davon es steht',
    'direction of the flight': 'Verfolgen Sie die Kugel über ein längeres Stück',
    'recording rate':
      'Messen Sie die wahre Bildrate der Kamera mit einer Lampe oder einem Zeitgeber bekannter Frequenz',
    "the file's time stamps":
      'Filmen Sie eine Lampe oder einen Zeitgeber bekannter Frequenz, und geben Sie die so gefundene Bildrate ein',
    'frame times':
      'Filmen Sie mit einer Kamera, die ihre Bildrate gleichmäßig hält, oder verwenden Sie mehr Bilder hinter der Mündung',
    'time per line':
      'Messen Sie die Zeit je Zeile mit einer flackernden Lampe, oder drehen Sie die Kamera so, dass ihre Zeilen quer zum Flug gelesen werden',
    'place of the muzzle plane': 'Markieren Sie die Mündungsebene genauer, im vergrößerten Bild',
    'ball centres':
      'Sorgen Sie für mehr Bilder hinter der Mündung durch eine höhere Bildrate oder ein weiteres Bildfeld, oder für schärfere Mittelpunkte durch mehr Licht und eine nähere Kamera',
    'air drag as filmed':
      'Filmen Sie ein längeres Stück des Flugs, auf dem die Kugel sichtbar langsamer wird',
    'air drag as expected':
      'Filmen Sie ein längeres Stück des Flugs, auf dem die Kugel sichtbar langsamer wird',
    'loss in the muzzle zone as filmed':
      'Sorgen Sie für mehr Bilder oder schärfere Mittelpunkte innerhalb von drei Kugeldurchmessern ab der Mündung und kurz dahinter',
    'loss in the muzzle zone as expected':
      'Lassen Sie das Bildfeld an der Mündung beginnen und filmen Sie weit über drei Kugeldurchmesser hinaus, sodass der Verlust dort gesehen und nicht angenommen wird',
    'shape of the muzzle zone':
      'Lassen Sie das Bildfeld an der Mündung beginnen und filmen Sie weit über drei Kugeldurchmesser hinaus, sodass der Verlust dort gesehen und nicht angenommen wird',
    'choice of model':
      'Filmen Sie ein längeres Stück des Flugs mit mehr Bildern, an denen sich die Modelle unterscheiden lassen',
    'refraction in the wall of the tube':
      'Filmen Sie das Rohrende rechtwinklig und aus größerer Entfernung, sodass nicht schräg durch seine Wand geblickt wird',
    'air drag left out':
      'Lassen Sie das Modell automatisch wählen; dann zählt der Luftwiderstand mit',
    'ball diameter': 'Messen Sie die Kugel mit einem Messschieber in mehreren Richtungen',
    'ball mass': 'Wiegen Sie die Kugel',
    'air density': 'Lesen Sie Thermometer und Barometer neben dem Werfer ab',
    'air temperature': 'Lesen Sie ein Thermometer neben dem Werfer ab',
    'air pressure':
      'Lesen Sie ein Barometer in der Höhe des Werfers ab, nicht auf Meereshöhe umgerechnet',
    'air humidity': 'Lesen Sie ein Hygrometer neben dem Werfer ab',
  },
};
