# Draws the posts of the marsh trail: a numeral, the ring of the sun, reeds. Writes post-8.svg.
# python3 posts.py number=8 reeds=7 sway=3 sun=16
import sys

given = dict(word.split('=') for word in sys.argv[1:])
number = given.get('number', '8')
reeds, sway, sun = (int(given.get(name, usual)) for name, usual in (('reeds', 7), ('sway', 3), ('sun', 16)))

# Block numerals, 20 by 32.
NUMERALS = {
    '0': 'M0 0H20V32H0ZM5 5V27H15V5Z',
    '1': 'M6 0H13V32H6Z',
    '2': 'M0 0H20V19H5V27H20V32H0V13H15V5H0Z',
    '3': 'M0 0H20V32H0V27H15V19H4V13H15V5H0Z',
    '4': 'M0 0H5V13H15V0H20V32H15V19H0Z',
    '5': 'M0 0H20V5H5V13H20V32H0V27H15V19H0Z',
    '6': 'M0 0H20V5H5V13H20V32H0ZM5 19V27H15V19Z',
    '7': 'M0 0H20V32H15V5H0Z',
    '8': 'M0 0H20V32H0ZM5 5V13H15V5ZM5 19V27H15V19Z',
    '9': 'M0 0H20V32H0V27H15V19H0ZM5 5V13H15V5Z',
}


def circle(x, y, r):
    return f'M{x - r} {y}a{r} {r} 0 1 0 {2 * r} 0a{r} {r} 0 1 0 {-2 * r} 0Z'


def ring(name, x, y, outer, inner):
    return f'<path id="{name}" d="{circle(x, y, outer)}{circle(x, y, inner)}"/>'


def numeral(index, digit):
    return f'<path id="digit{index + 1}" transform="translate({30 + 24 * index} 92)" d="{NUMERALS[digit]}"/>'


def reed(index):
    x = 10 + index * 12
    height = 30 + ((index * 7) % 5) * 4
    return f'<path id="reed{index + 1}" d="M{x} 84L{x + sway} {84 - height}h1l2 {height}Z"/>'


def layer(name, fill, shapes):
    joined = '\n'.join(shapes)
    return f'''<g id="{name}" fill="{fill}" fill-rule="evenodd">
{joined}
</g>'''


drawing = f'''<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="140mm" viewBox="0 0 100 140">
{layer('Sun', '#e8a33d', [ring('halo', 50, 28, sun + 4, sun), ring('core', 50, 28, sun - 4, sun - 8)])}
{layer('Reeds', '#6b8a4e', [reed(index) for index in range(reeds)])}
{layer('Numeral', '#3b4a54', [numeral(index, digit) for index, digit in enumerate(number)])}
</svg>
'''
with open(f'post-{number}.svg', 'w', newline='') as file:
    file.write(drawing)
