#!/usr/bin/env bash
# Installs what the tests need on Debian, builds everything with warnings as errors, and runs every test.
# Last line: "N passed, N failed"; a skipped test counts as failed. Ends non-zero when anything failed.
set -uo pipefail
cd "$(dirname "$0")/.."

missing=()
command -v redis-server >/dev/null || missing+=(redis-server)
command -v chromium >/dev/null || missing+=(chromium)
command -v node >/dev/null || missing+=(nodejs)
command -v npm >/dev/null || missing+=(npm)
if [ ${#missing[@]} -gt 0 ]; then
  as_root=()
  [ "$(id -u)" = 0 ] || as_root=(sudo)
  "${as_root[@]}" apt-get update -q && "${as_root[@]}" apt-get install -q -y --no-install-recommends "${missing[@]}" || exit 1
fi

(cd tests/HeapText.Carriers.Tests/Smpp/peer && npm ci --ignore-scripts --no-audit --no-fund) || exit 1

dotnet restore HeapText.sln --locked-mode || exit 1
dotnet build HeapText.sln --no-restore --nologo -v quiet || exit 1

passed=0
failed=0
status=0
for project in tests/*.Tests; do
  log=$(mktemp)
  dotnet test --project "$project" --no-build 2>&1 | tee "$log" || status=1
  count() { sed -n "s/^ *$1: \([0-9]*\).*/\1/p" "$log" | tail -n 1; }
  total=$(count total)
  succeeded=$(count succeeded)
  if [ "${total:-0}" -eq 0 ]; then
    echo "$project ran no test"
    failed=$((failed + 1))
  fi
  passed=$((passed + ${succeeded:-0}))
  failed=$((failed + ${total:-0} - ${succeeded:-0}))
  rm -f "$log"
done

echo "How well texts are read, by lines the reader was never tuned on:"
cat artifacts/reading-scores/*.txt

echo "How a line stood an unreliable message centre:"
cat artifacts/lines/smpp-peer.txt

[ "$failed" -eq 0 ] || status=1
if [ "$status" -ne 0 ] && [ "$failed" -eq 0 ]; then
  echo "a test project ended badly though no test failed"
  failed=1
fi
echo "$passed passed, $failed failed"
exit "$status"
