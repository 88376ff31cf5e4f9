-- Leases the heads of farmers who wait on one line, in one partition and priority.
-- KEYS  1 waiting farmers, then for each farmer: its outbox, its farmer
-- ARGV  1 now [ms], 2 end of the lease [ms], 3 length of version and sealed number [bytes], 4... farmers
-- Gives for each one taken: farmer, attempt, version and sealed number, outbox entry.
-- Each is removed before it is put back: a removal is allowed when memory is full, and so is all that follows it.

local taken = {}
for i = 4, #ARGV do
  local ready = redis.call('ZSCORE', KEYS[1], ARGV[i])
  if ready and tonumber(ready) <= tonumber(ARGV[1]) then
    local outbox = KEYS[2 * (i - 4) + 2]
    local head = redis.call('ZRANGE', outbox, 0, 0, 'WITHSCORES')
    local attempt = math.max(0, -tonumber(head[2])) + 1
    redis.call('ZREM', KEYS[1], ARGV[i])
    redis.call('ZADD', KEYS[1], ARGV[2], ARGV[i])
    redis.call('ZADD', outbox, string.format('%.0f', -attempt), head[1])
    taken[#taken + 1] = ARGV[i]
    taken[#taken + 1] = attempt
    taken[#taken + 1] = redis.call('GETRANGE', KEYS[2 * (i - 4) + 3], 0, tonumber(ARGV[3]) - 1)
    taken[#taken + 1] = head[1]
  end
end
return taken
