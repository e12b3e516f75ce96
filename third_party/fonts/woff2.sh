#!/bin/sh
# Makes the WOFF2 files of this folder, for the page, from the TTF files beside them,
# and notes the sums of both. Needs Debian 12: apt-get install -y woff2
set -eu
cd "$(dirname "$0")"
for file in *.ttf; do
	woff2_compress "$file"
done
sha256sum ./*.ttf ./*.woff2 | sed 's,\./,,' >SHA256SUMS
