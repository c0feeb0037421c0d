# Sourced by ./run and ./check: installs what packages.txt lists, configures and builds.

# Says what it installs; asks for nothing when all is there.
install_packages() {
  local root=$1 missing=() package
  while read -r package; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done < <(sed 's/#.*//; s/[[:space:]]//g; /^$/d' "$root/packages.txt")
  [ ${#missing[@]} -eq 0 ] && return 0
  echo "Installing: ${missing[*]}" >&2
  local as_root=()
  [ "$(id -u)" -eq 0 ] || as_root=(sudo)
  "${as_root[@]}" apt-get update -qq >&2
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -qq --no-install-recommends "${missing[@]}" >&2
}

# configure ROOT BUILD_FOLDER CMAKE_ARGUMENTS… : quiet unless it fails.
configure() {
  local root=$1 build=$2 log
  shift 2
  log=$(mktemp)
  if ! cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release "$@" >"$log" 2>&1; then
    cat "$log" >&2
    rm -f "$log"
    return 4
  fi
  rm -f "$log"
}

# Nothing that the program is made of is newer than its last build. Asking ninja would not do: with
# globbed sources its dry run always wants to configure again.
program_is_current() {
  local root=$1
  [ -x "$root/build/tierwright" ] && [ -f "$root/build/program-built" ] &&
    [ -z "$(find "$root/src" "$root/cmake" "$root/CMakeLists.txt" "$root/packages.txt" \
              -newer "$root/build/program-built" -print -quit)" ]
}

# Builds the program alone; says nothing when it is up to date. Its own messages go to stderr.
build_program() {
  local root=$1 log started
  program_is_current "$root" && return 0
  started=$(mktemp)
  install_packages "$root"
  [ -f "$root/build/build.ninja" ] || configure "$root" "$root/build" -DTIERWRIGHT_WERROR=ON  # as ./check, so that neither rebuilds
  if [ -t 2 ]; then
    ninja -C "$root/build" tierwright tierwright-desk >&2 || return 4
  else
    log=$(mktemp)
    echo "Building tierwright (once; a few minutes on a fresh machine) …" >&2
    if ! ninja -C "$root/build" tierwright tierwright-desk >"$log" 2>&1; then
      cat "$log" >&2
      rm -f "$log" "$started"
      return 4
    fi
    rm -f "$log"
  fi
  mv "$started" "$root/build/program-built"  # as old as the start: edits made meanwhile are newer
}
