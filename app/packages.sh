# Read by app/run and tests/run: which Debian packages are wanted, and how to get those missing.

build_packages=(
    g++ cmake ninja-build qt6-base-dev qt6-svg-dev libfontconfig-dev nlohmann-json3-dev libcli11-dev
    coinor-libcbc-dev coinor-libclp-dev pkg-config fonts-dejavu-core
    gettext
)
test_packages=(
    libgtest-dev libgmock-dev librapidcheck-dev libbenchmark-dev coinor-cbc poppler-utils xvfb xauth
    libxml2-utils ccache clang libclang-rt-dev lld clang-format clang-tidy desktop-file-utils
    shared-mime-info appstream dpkg-dev file git
)

# need_packages NAME...: installs what is missing, as root or through sudo; ends the script with a
# clear message where that cannot be done. Touches nothing where all is there.
need_packages() {
    local missing=() name
    command -v dpkg-query > /dev/null || return 0 # not a Debian: cmake names what it lacks
    for name in "$@"; do
        dpkg-query -W -f='${db:Status-Status}\n' "$name" 2> /dev/null | grep -qx installed ||
            missing+=("$name")
    done
    [ ${#missing[@]} -gt 0 ] || return 0

    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo > /dev/null; then
            echo "These packages are missing, and there is neither root nor sudo to install them:" >&2
            echo "  ${missing[*]}" >&2
            echo "Ask an administrator for:  apt-get install ${missing[*]}" >&2
            exit 1
        fi
        as_root=(sudo)
    fi
    echo "Installing: ${missing[*]}" >&2
    if ! { "${as_root[@]}" apt-get -qq update &&
        "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
            apt-get -qq install -y --no-install-recommends "${missing[@]}" > /dev/null; }; then
        echo "The packages could not be installed. By hand:  sudo apt-get install ${missing[*]}" >&2
        exit 1
    fi
}
