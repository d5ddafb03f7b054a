# What Boltwright needs from Debian, and how to get it: for the scripts that source this.

needed_to_build=(
  g++ cmake ninja-build
  qt6-base-dev qt6-svg-dev fonts-dejavu-core
  libboost-dev libcadical-dev libcli11-dev libexpected-dev libfmt-dev nlohmann-json3-dev
)
needed_to_test=(catch2 librapidcheck-dev libgeos-dev python3 python3-shapely poppler-utils qpdf)
needed_to_inspect=(clang-tidy clang-format)

# have PACKAGE: is it installed?
have() { dpkg-query -W -f='${Status}' "$1" 2>/dev/null | grep -q 'install ok installed'; }

# install PACKAGE...: installs those that are missing, as root or by sudo, and touches nothing else.
install() {
  local missing=() package
  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    echo "This is no Debian. These packages, under their names here, are needed: $*"
    return 0
  fi
  for package in "$@"; do have "$package" || missing+=("$package"); done
  [ ${#missing[@]} -gt 0 ] || return 0
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || { echo "Please install these as root, then call this again: ${missing[*]}" >&2; return 1; }
    as_root=(sudo)
  fi
  echo "Installing from Debian: ${missing[*]}"
  "${as_root[@]}" apt-get -qq update
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq install -y --no-install-recommends "${missing[@]}" >/dev/null
}
