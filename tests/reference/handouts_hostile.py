"""A project whose names hold all that can hurt a page, a table, a calendar or a file system."""

# In the order of the classes. TOML keeps what stands in literal quotes as it is; what cannot be
# typed there is written with an escape.
NAMES = [
    "'<script>alert(1)</script> & <b>'",
    "'=HYPERLINK(\"https://example.org\"; \"x\")'",
    "'+2a, \"b\"; c'",
    "'-1+1'",
    "'@SUM(1)'",
    "'../../etc/passwd'",
    "'..\\..\\con'",
    "'con.'",
    "'a/b:c*d?e'",
    "'A B C D E'",  # The same file name as the one before.
    '"\\u202Eright to left\\u202C \\u2066x\\u2069"',
    "'כיתה ג'",
    "'صف ٣'",
    "'🌻 👩‍🌾 sunflowers'",
    "'\\n\\, ;:'",
    "'é" + "ä" * 150 + "'",
    "'...'",
    "'7'",
]

CLASSES = "\n".join(
    f"  {{ name = {name}, children = 3, day = \"Tue\", minutes = 40{', at = 10:15' if n % 2 else ''} }},"
    for n, name in enumerate(NAMES)
)

HOSTILE = f"""
[project]
name = '=1+1 <b>Radish</b>, "day"; ../x'
school = '<img src=x onerror=alert(1)> & "Sons"'
feast = 2027-06-11

[place]
latitude = 44.3

[place.monthly]
tmin_c  = [-9, -8, -4, 1, 7, 12, 15, 14, 9, 4, -1, -6]
tmax_c  = [0, 2, 7, 14, 20, 25, 28, 26, 22, 15, 8, 2]
rain_mm = [60, 55, 65, 75, 80, 90, 90, 90, 80, 75, 75, 65]

[calendar]
start = 2027-04-05
terms = [{{ name = "Spring, \\"the\\" term", from = 2027-04-05, to = 2027-06-18 }}]
breaks = [{{ name = '=cmd|x, "off"; \\n', from = 2027-05-03, to = 2027-05-07, care = "none" }}]

[[grade]]
id = '../<2>'
name = '@grade, "two"; <i>'
classes = [
{CLASSES}
]

[[dish.ingredient]]
name = '-radish, "red"; <u>'
crop = "radish"
grade = '../<2>'
grams_per_portion = 20

[[bed]]
id = '=1, <b>'
length_m = 6
width_m = 1.2
"""
