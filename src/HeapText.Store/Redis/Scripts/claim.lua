-- Claims farmers of one partition who are still due.
-- KEYS  1 due
-- ARGV  1 now [ms], 2 end of the claim [ms], 3... farmers
-- Gives the farmers claimed.

local claimed = {}
for i = 3, #ARGV do
  local due = redis.call('ZSCORE', KEYS[1], ARGV[i])
  if due and tonumber(due) <= tonumber(ARGV[1]) then
    redis.call('ZADD', KEYS[1], ARGV[2], ARGV[i])
    claimed[#claimed + 1] = ARGV[i]
  end
end
return claimed
