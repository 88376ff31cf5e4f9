-- Makes ready the heads of farmers who wait on one line, in one partition and priority, for a moment too far ahead.
-- KEYS  1 waiting farmers, then the outbox of each farmer
-- ARGV  1 now [ms], 2 moment after which it is too far [ms], 3... farmers
-- Gives how many were given back. A head never taken is ready at its not-before, unless it was put back.

local given = 0
for i = 3, #ARGV do
  local ready = redis.call('ZSCORE', KEYS[1], ARGV[i])
  if ready and tonumber(ready) > tonumber(ARGV[2]) then
    local head = redis.call('ZRANGE', KEYS[i - 1], 0, 0, 'WITHSCORES')
    local before = math.max(0, tonumber(head[2]))
    if before < tonumber(ready) then
      redis.call('ZREM', KEYS[1], ARGV[i])
      redis.call('ZADD', KEYS[1], string.format('%.0f', math.max(tonumber(ARGV[1]), before)), ARGV[i])
      given = given + 1
    end
  end
end
return given
