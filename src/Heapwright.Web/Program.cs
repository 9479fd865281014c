var builder = WebApplication.CreateBuilder(args);
var address = Environment.GetEnvironmentVariable("HEAPWRIGHT_URL");
if (!string.IsNullOrEmpty(address))
{
    builder.WebHost.UseUrls(address);
}

var app = builder.Build();
app.Run();
