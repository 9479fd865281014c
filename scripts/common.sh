# shellcheck shell=bash
# What ./heapwright, ./run and ./test share. Sourced; expects ROOT to be the root of the repository.

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1
# No build server may outlive a script: it would keep the pipe of whoever reads our output open.
export MSBUILDDISABLENODEREUSE=1 UseSharedCompilation=false
OUT="$ROOT/artifacts"

if ! command -v dotnet >/dev/null; then
    echo "The .NET SDK (version 10) is needed and was not found: install it so that 'dotnet' can be run." >&2
    exit 2
fi
# Some build machines have no home folder; the SDK insists on one.
if [[ -z "${HOME:-}" || ! -w "${HOME:-}" ]]; then
    mkdir -p "$OUT/home"
    export HOME="$OUT/home" DOTNET_CLI_HOME="$OUT/home"
fi

# stale NAME: whether anything the program NAME is built from changed since it was built. Folders count too, so
# that a deleted file is noticed. The stamp carries the time at which the build began.
stale() {
    local stamp="$OUT/$1/stamp"
    [[ -f "$stamp" ]] || return 0
    [[ -n "$(find "$ROOT/src" "$ROOT/data" \( -name bin -o -name obj \) -prune -o \
        -newer "$stamp" -print -quit)" ]] && return 0
    [[ "$ROOT/Directory.Build.props" -nt "$stamp" || "$ROOT/Directory.Packages.props" -nt "$stamp" ||
        "$ROOT/global.json" -nt "$stamp" || "$ROOT/scripts/common.sh" -nt "$stamp" ]]
}

# publish NAME PROJECT: builds the program and puts it where it can be started. Every build gets a folder of its own,
# which a small file names at the end, so that a program that is running keeps its files.
publish() {
    local project="$ROOT/$2" home="$OUT/$1" log="$OUT/$1/build.log" new old folder
    mkdir -p "$home"
    new="$home/$(date +%s%N)"
    # Made now, or the folders around them would look newer than the build that made them.
    for folder in "$ROOT"/src/*/; do
        mkdir -p "$folder/bin" "$folder/obj"
    done
    touch "$home/stamp.new"
    if ! compile >"$log" 2>&1; then
        rm -rf "$new"
        grep -E ': (error|warning) ' "$log" | sort -u >&2 || tail -n 40 "$log" >&2
        echo "Heapwright could not be built: see above; everything is in $log." >&2
        return 1
    fi
    basename "$new" >"$home/current.new"
    mv "$home/current.new" "$home/current"
    mv "$home/stamp.new" "$home/stamp"
    # The build before this one may still be running somewhere; those before it go.
    for old in $(find "$home" -mindepth 1 -maxdepth 1 -type d | sort | head -n -2); do
        rm -rf "$old"
    done
}

# compile: $project into $new. A configuration of its own: what is compiled here without the analyzers must not pass
# for checked in ./test. Compiled ahead it starts sooner; the package for that exists for some platforms only, and
# without it the program is the same.
compile() {
    local -a common=(-c Shipped -p:Optimize=true -p:RunAnalyzersDuringBuild=false -p:EnforceCodeStyleInBuild=false
        --no-restore -o "$new")
    if [[ "$(uname -sm)" == "Linux x86_64" ]] && dotnet restore "$project"; then
        command -v clang >/dev/null || common+=(-p:CppCompilerAndLinker=gcc)
        [[ "$project" == *Native* ]] || common+=(--no-self-contained)
        dotnet publish "$project" -r linux-x64 "${common[@]}"
    else
        dotnet restore "$project" -p:PublishReadyToRun=false &&
            dotnet publish "$project" -p:PublishReadyToRun=false "${common[@]}"
    fi
}

# fresh NAME PROJECT: builds the program if it is stale, one build at a time.
fresh() {
    stale "$1" || return 0
    mkdir -p "$OUT"
    (
        flock 9
        # Another invocation may have built it while this one waited.
        if stale "$1"; then
            publish "$1" "$2" 9>&-
        fi
    ) 9>"$OUT/lock" </dev/null
}

# folder NAME: sets FOLDER to where the program NAME stands.
folder() {
    read -r FOLDER <"$OUT/$1/current"
    FOLDER="$OUT/$1/$FOLDER"
}
