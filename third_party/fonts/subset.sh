#!/bin/sh
# Makes the font files of this folder anew, beside this script. Needs Debian 12:
#   apt-get install -y fonts-sil-gentiumplus fonts-sil-andika python3-fonttools
set -eu
cd "$(dirname "$0")"

# Latin with everything that names are written in, Cyrillic, punctuation and
# spaces, raised and lowered figures, money, fractions, arrows, arithmetic, ticks.
chars='U+0020-007E,U+00A0-024F,U+0259,U+02BB,U+02BC,U+02C6-02DD,U+0400-045F,U+1E00-1EFF'
chars="$chars,U+2000-200A,U+2010-2027,U+202F-205E,U+2070-209C,U+20A0-20BF,U+2113,U+2116,U+2122"
chars="$chars,U+2150-215F,U+2189,U+2190-2195,U+0394,U+03A9,U+03C0,U+2202,U+2206,U+220F,U+2211-2219"
chars="$chars,U+221A,U+221E,U+2248,U+2260,U+2264,U+2265,U+25CA,U+25CB,U+25CF,U+2713,U+2714,U+2717,U+FB01,U+FB02,U+FFFD"

subset() { # source, file, name, style
	/usr/bin/python3 -m fontTools.subset "/usr/share/fonts/truetype/$1" --output-file="$2.ttf" --unicodes="$chars" \
		--layout-features='' --no-hinting --drop-tables+=GPOS,GSUB,GDEF,Silt,Feat,Glat,Gloc,Sill,DSIG \
		--name-IDs='0,1,2,3,4,5,6,13,14' --no-recalc-timestamp
	/usr/bin/python3 adapt.py "$2.ttf" "$3" "$4"
}

subset gentiumplus/GentiumPlus-Regular.ttf SleySerif-Regular 'Sley Serif' Regular
subset gentiumplus/GentiumPlus-Bold.ttf SleySerif-Bold 'Sley Serif' Bold
subset gentiumplus/GentiumPlus-Italic.ttf SleySerif-Italic 'Sley Serif' Italic
subset andika/Andika-Regular.ttf SleySans-Regular 'Sley Sans' Regular
subset andika/Andika-Bold.ttf SleySans-Bold 'Sley Sans' Bold
