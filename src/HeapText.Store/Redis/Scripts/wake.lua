-- The earliest moment at which something of one partition is due or may be sent.
-- KEYS  1... sorted sets by moment
-- Gives the moment [ms] as text, or false.

local earliest = false
for i = 1, #KEYS do
  local score = redis.call('ZRANGE', KEYS[i], 0, 0, 'WITHSCORES')[2]
  if score and (not earliest or tonumber(score) < tonumber(earliest)) then earliest = score end
end
return earliest
